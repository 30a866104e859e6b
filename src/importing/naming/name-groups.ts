import { groupedBy } from '../points/grouped-by.ts';
import { writtenName } from './circuit-name.ts';
import { type NameReading, nameReadings } from './name-readings.ts';
import { matchedShare, scoreOf } from './name-score.ts';
import { NamesOfOthers } from './names-of-others.ts';
import { isPlaceLetter } from './place-letter.ts';
import { namesOnly, type ResidualToken, residualOf } from './residual.ts';
import type { NamedColumn } from './role.ts';
import { textOf } from './tokens.ts';

/** Confidence of a column that is taken for air by its values alone, at most. */
export const byValuesOnly = 0.5;

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
  /** The name of its circuit as set points, defrosts and valves spell it; null where they do not. */
  readonly ofOthers: string | null;
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
  const ofOthers = new NamesOfOthers(others);
  const names = air.map((column): ReadName => {
    const residual = residualOf(column);
    return { column, residual, ofOthers: ofOthers.within(residual) };
  });
  let best: NameGrouping | null = null;
  for (const stemmed of byFile ? [false, true] : [false]) {
    const keysOfOthers = others.map((column) =>
      groupKey(stemOf(column, stemmed), namesOnly(residualOf(column))),
    );
    for (const reading of nameReadings) {
      const { because, onlyWithOthers } = reading;
      const groups = grouped(names, reading, stemmed);
      if (onlyWithOthers && matchedShare(groups, keysOfOthers) < 0.5) continue;
      const score = scoreOf(groups, air.length, others, keysOfOthers);
      if (best === null || score > best.score + 1e-9) {
        best = { byFile: stemmed, groups, score, because: stemmed ? 'they stand in one file' : because };
      }
    }
  }
  return best ?? { byFile: false, groups: [], score: 0, because: '' };
}

/** The name of an air column, and the circuit in it as other columns spell it; null where they do not. */
interface ReadName {
  readonly column: NamedColumn;
  readonly residual: readonly ResidualToken[];
  readonly ofOthers: readonly ResidualToken[] | null;
}

function grouped(
  names: readonly ReadName[],
  { read, placesInAnyWord }: NameReading,
  stemmed: boolean,
): NameGroup[] {
  const named = names.some(({ column }) => column.confidence > byValuesOnly);
  const placed = names.map(({ column, residual, ofOthers }) => {
    // A word that nobody knows is a place behind `air`, not where the values alone look like air.
    const unsaid = placesInAnyWord === true && named && column.confidence <= byValuesOnly;
    const keyTokens = unsaid ? residual : read(residual, ofOthers);
    const place = residual.filter((token) => !keyTokens.includes(token));
    return {
      column,
      position: textOf(place),
      isPlace: isPlace(place),
      keyTokens,
      ofOthers: ofOthers === null ? null : textOf(ofOthers),
      stem: stemOf(column, stemmed),
    };
  });
  const byKey = groupedBy(placed, ({ keyTokens, stem }) => groupKey(stem, keyTokens));
  const tellsApart = placesInAnyWord === true ? placeWords([...byKey.values()]) : () => false;
  return [...byKey].map(([id, members]) => ({
    id,
    key: members[0]!.keyTokens.map((token) => token.text),
    stem: members[0]!.stem,
    name: circuitName(members[0]!.stem, members[0]!),
    air: members.map((probe) => (tellsApart(probe, members) ? { ...probe, isPlace: true } : probe)),
  }));
}

/**
 * Whether what is left of a name tells a probe from its neighbours: each of the circuit has such a word, and either it
 * returns at another circuit, or none of them is counted and the circuit's name is more than a number. `Dairy 1` and
 * `Meat 1` are no places of circuit 1, and `Meat prep` beside `Meat 1` and `Meat 2` none of the meat.
 */
function placeWords(
  circuits: readonly (readonly PlacedProbe[])[],
): (probe: PlacedProbe, circuit: readonly PlacedProbe[]) => boolean {
  const circuitsWith = new Map<string, number>();
  for (const circuit of circuits) {
    for (const place of new Set(circuit.map(({ position }) => position)))
      circuitsWith.set(place, (circuitsWith.get(place) ?? 0) + 1);
  }
  return (probe, circuit) => {
    if (circuit.length < 2 || circuit.some(({ position }) => position === '')) return false;
    if (circuitsWith.get(probe.position)! > 1) return true;
    return (
      circuit.every(({ isPlace }) => !isPlace) && probe.keyTokens.some(({ text }) => !/^\d+$/.test(text))
    );
  };
}

function circuitName(stem: string | null, { column, keyTokens }: PlacedProbe): string {
  const own = writtenName(column, keyTokens);
  return [stem, own].filter((part) => part !== null && part !== '').join(' ') || column.point.fileStems[0]!;
}

/** The file stem where it is part of the name: circuits by file, or a header that several files carry. */
export function stemOf(column: NamedColumn, byFile: boolean): string | null {
  const { point, name } = column;
  if (name !== point.header) return null;
  return byFile || point.name !== point.header ? point.fileStems[0]! : null;
}

export function groupKey(stem: string | null, key: readonly ResidualToken[]): string {
  return `${stem ?? ''}\n${textOf(key)}`;
}

/** Words for a place, and at most one bare letter or number. */
function isPlace(tokens: readonly ResidualToken[]): boolean {
  const bare = tokens.filter((token) => token.mark !== 'probe' && token.mark !== 'case');
  return bare.length <= 1 && bare.every((token) => isPlaceLetter(token.text) || /^\d+$/.test(token.text));
}
