import type { ImportIssue } from '../../model/import-report.ts';
import { groupedBy } from '../points/grouped-by.ts';
import type { Point } from '../points/point.ts';
import { nearestName } from '../site-file/nearest-name.ts';

/** Finds the points that a site file names, and keeps account of those that the export does not hold. */
export class PointIndex {
  readonly issues: ImportIssue[] = [];
  readonly #byName = new Map<string, Point>();
  #loose: Map<string, [string, Point][]> | null = null;
  readonly #ambiguous = new Map<string, readonly Point[]>();

  constructor(points: readonly Point[]) {
    const byHeader = new Map<string, Point[]>();
    for (const point of points) {
      byHeader.set(point.header, [...(byHeader.get(point.header) ?? []), point]);
      for (const stem of point.fileStems) this.#byName.set(`${stem}:${point.header}`, point);
    }
    for (const [header, sharing] of byHeader) {
      if (sharing.length === 1) this.#byName.set(header, sharing[0]!);
      else this.#ambiguous.set(header, sharing);
    }
    for (const point of points) this.#byName.set(point.name, point);
  }

  /** The point, or null with an issue that says where the site file named it and what comes nearest. */
  find(name: string, place: string): Point | null {
    const wanted = name.trim();
    const found = this.#byName.get(wanted) ?? this.#byLooseName(wanted);
    if (found !== undefined) return found;
    this.issues.push(this.#missing(wanted, place));
    return null;
  }

  #byLooseName(name: string): Point | undefined {
    this.#loose ??= groupedBy(this.#byName, ([known]) => looseName(known));
    const matches = new Set((this.#loose.get(looseName(name)) ?? []).map(([, point]) => point));
    return matches.size === 1 ? [...matches][0] : undefined;
  }

  #missing(name: string, place: string): ImportIssue {
    const sharing = this.#ambiguous.get(name);
    if (sharing !== undefined) {
      const names = sharing.slice(0, 3).map((point) => point.name);
      return {
        code: 'point-ambiguous',
        line: null,
        column: name,
        count: sharing.length,
        message: `The site file names ${name} (${place}), which ${sharing.length} files carry for different points; write which file: ${names.join(' or ')}.`,
        examples: names,
      };
    }
    const near = this.issues.length < mostSuggestions ? nearestName(name, this.#byName.keys()) : null;
    return {
      code: 'point-missing',
      line: null,
      column: name,
      count: 1,
      message: `The site file names ${name} (${place}), which the export does not hold${near === null ? '' : `; the nearest column is ${near}`}. Correct the site file or export that column too.`,
      ...(near === null ? {} : { examples: [near] }),
    };
  }
}

/** Further missing points are named without the nearest column: the site file is of another store. */
const mostSuggestions = 30;

/** Case, repeated spaces and a unit in brackets do not tell two points apart unless both exist. */
function looseName(name: string): string {
  return name
    .toLowerCase()
    .replace(/[([][^()[\]]{0,12}[)\]]$/, '')
    .replace(/\s+/g, ' ')
    .trim();
}
