import type { ImportIssue } from '../../model/import-report.ts';
import { ImportRefusal } from '../readings.ts';
import type { SiteCircuit, SiteFile } from '../site-file/site-file.ts';
import type { PlacedPoints } from './place-points.ts';

export interface UsableSite {
  readonly circuits: readonly SiteCircuit[];
  readonly issues: readonly ImportIssue[];
}

/**
 * The circuits of which the export holds at least one probe. A missing point costs only what rests on it; a
 * site file of which nothing is left belongs to another export, and is refused.
 */
export function usableCircuits(site: SiteFile, placed: PlacedPoints, guessed: boolean): UsableSite {
  const circuits: SiteCircuit[] = [];
  const issues: ImportIssue[] = [];
  for (const circuit of site.circuits ?? []) {
    if (circuit.probes.some((name) => placed.find(name) !== null)) {
      circuits.push(circuit);
      continue;
    }
    issues.push({
      code: 'circuit-without-probes',
      line: null,
      column: null,
      count: 1,
      message: `Circuit ${circuit.id} is left out: the export holds none of its probes (${circuit.probes.join(', ') || 'none is named'}).`,
    });
  }
  if (!guessed && circuits.length === 0 && placed.places.size === 0) throw nothingLeft(placed);
  return { circuits, issues };
}

function nothingLeft(placed: PlacedPoints): ImportRefusal {
  const first = placed.issues[0]?.message ?? 'It names no point.';
  return new ImportRefusal(
    'site-file-matches-nothing',
    `The site file and the export have no point in common; are they of the same store? ${first}`,
  );
}
