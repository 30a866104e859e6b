import { groupedBy } from '../points/grouped-by.ts';
import { writtenName } from './circuit-name.ts';
import { type NameReading, nameReadings } from './name-readings.ts';
import { matchedShare, scoreOf } from './name-score.ts';
import { isPlaceLetter } from './place-letter.ts';
import { keyText, type ResidualToken, residualOf } from './residual.ts';
import type { NamedColumn } from './role.ts';

/** Air columns that share the name of a circuit. */
export interface NameGroup {
  /** Stem and key in one text, unique. */
  readonly id: string;
  readonly key: readonly string[];
  /** File stem where circuits are told apart by their file. */
  readonly stem: string | null;
  /** What to call the circuit. */
  readonly name: string;
  readonly air: readonly PlacedProbe[];
}

export interface PlacedProbe {
  readonly column: NamedColumn;
  /** What tells it from its neighbours: `1`, `b`, `left`. */
  readonly position: string;
  /** Whether that can be a place in a line-up, and is not half a name. */
  readonly isPlace: boolean;
  readonly keyTokens: readonly ResidualToken[];
}

export interface NameGrouping {
  readonly byFile: boolean;
  readonly groups: readonly NameGroup[];
  /** 0 to about 3: how well the names hang together this way. */
  readonly score: number;
  readonly because: string;
}

/** Groups air columns by name, in the reading under which the names and the circuit's other columns fit best. */
export function groupByName(air: readonly NamedColumn[], others: readonly NamedColumn[]): NameGrouping {
  const byFile = new Set(air.map((column) => column.point.fileStems[0]!)).size > 1;
  let best: NameGrouping | null = null;
  for (const stemmed of byFile ? [false, true] : [false]) {
    const keysOfOthers = others.map((column) => groupKey(stemOf(column, stemmed), residualOf(column)));
    for (const { read, because, onlyWithOthers } of nameReadings) {
      const groups = grouped(air, read, stemmed);
      if (onlyWithOthers && matchedShare(groups, keysOfOthers) < 0.5) continue;
      const score = scoreOf(groups, air.length, others, keysOfOthers);
      if (best === null || score > best.score + 1e-9) {
        best = { byFile: stemmed, groups, score, because: stemmed ? 'they stand in one file' : because };
      }
    }
  }
  return best ?? { byFile: false, groups: [], score: 0, because: '' };
}

function grouped(air: readonly NamedColumn[], read: NameReading['read'], stemmed: boolean): NameGroup[] {
  const placed = air.map((column) => {
    const residual = residualOf(column);
    const keyTokens = read(residual);
    const place = residual.filter((token) => !keyTokens.includes(token));
    return {
      column,
      position: keyText(place),
      isPlace: isPlace(place),
      keyTokens,
      stem: stemOf(column, stemmed),
    };
  });
  const byKey = groupedBy(placed, ({ keyTokens, stem }) => groupKey(stem, keyTokens));
  return [...byKey].map(([id, members]) => ({
    id,
    key: members[0]!.keyTokens.map((token) => token.text),
    stem: members[0]!.stem,
    name: circuitName(members[0]!.stem, members[0]!),
    air: members,
  }));
}

function circuitName(stem: string | null, { column, keyTokens }: PlacedProbe): string {
  const own = writtenName(column, keyTokens);
  return [stem, own].filter((part) => part !== null && part !== '').join(' ') || column.point.fileStems[0]!;
}

/** The file stem where it is part of the name: circuits by file, or a header that several files carry. */
export function stemOf(column: NamedColumn, byFile: boolean): string | null {
  return byFile || column.point.name !== column.point.header ? column.point.fileStems[0]! : null;
}

export function groupKey(stem: string | null, key: readonly ResidualToken[]): string {
  return `${stem ?? ''}\n${keyText(key)}`;
}

/** Words for a place, and at most one bare letter or number. */
function isPlace(tokens: readonly ResidualToken[]): boolean {
  const bare = tokens.filter((token) => token.mark !== 'probe' && token.mark !== 'case');
  return bare.length <= 1 && bare.every((token) => isPlaceLetter(token.text) || /^\d+$/.test(token.text));
}
