import { groupedBy } from '../points/grouped-by.ts';
import { writtenName } from './circuit-name.ts';
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

/** A way of reading the names: which tokens name the circuit. */
type Reading = (residual: readonly ResidualToken[]) => readonly ResidualToken[];

const readings: readonly { readonly read: Reading; readonly because: string }[] = [
  {
    read: (all) => all.filter((token) => token.mark !== 'probe'),
    because: 'their names share what comes before the probe',
  },
  {
    read: (all) => all.filter((token) => token.mark !== 'probe' && token.mark !== 'case'),
    because: 'their names share what comes before the case',
  },
  {
    read: (all) => (isShort(all.at(-1)) ? all.slice(0, -1) : all),
    because: 'their names share all but the last letter or number',
  },
  {
    read: (all) => (isShort(all[0]) ? all.slice(1) : all),
    because: 'their names share all but the first letter or number',
  },
  {
    read: (all) => all.filter((token) => token.mark === 'circuit'),
    because: 'their names carry the same circuit number',
  },
  { read: (all) => withoutLastDigits(all, 2), because: 'their numbers begin with the number of the circuit' },
  { read: (all) => withoutLastDigits(all, 1), because: 'their numbers begin with the number of the circuit' },
  { read: (all) => all, because: 'each has a name of its own' },
];

/** Groups air columns by name, in the reading under which the names and the circuit's other columns fit best. */
export function groupByName(air: readonly NamedColumn[], others: readonly NamedColumn[]): NameGrouping {
  const byFile = new Set(air.map((column) => column.point.fileStems[0]!)).size > 1;
  let best: NameGrouping | null = null;
  for (const stemmed of byFile ? [false, true] : [false]) {
    for (const { read, because } of readings) {
      const groups = grouped(air, read, stemmed);
      const keysOfOthers = others.map((column) => groupKey(stemOf(column, stemmed), residualOf(column)));
      const score = scoreOf(groups, air.length, others, keysOfOthers);
      if (best === null || score > best.score + 1e-9) {
        best = { byFile: stemmed, groups, score, because: stemmed ? 'they stand in one file' : because };
      }
    }
  }
  return best ?? { byFile: false, groups: [], score: 0, because: '' };
}

function grouped(air: readonly NamedColumn[], read: Reading, stemmed: boolean): NameGroup[] {
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

/** `0401` is probe 01 of circuit 04. */
function withoutLastDigits(all: readonly ResidualToken[], digits: number): readonly ResidualToken[] {
  const last = all.at(-1);
  if (last === undefined || !/^\d+$/.test(last.written) || last.written.length <= digits) return all;
  const written = last.written.slice(0, -digits);
  const text = written.replace(/^0+(?=\d)/, '');
  return [...all.slice(0, -1), { ...last, text, written, to: last.to - digits }];
}

/** Words for a place, and at most one bare letter or number. */
function isPlace(tokens: readonly ResidualToken[]): boolean {
  const bare = tokens.filter((token) => token.mark !== 'probe' && token.mark !== 'case');
  return bare.length <= 1 && bare.every((token) => token.text.length === 1 || /^\d+$/.test(token.text));
}

function isShort(token: ResidualToken | undefined): boolean {
  return (
    token !== undefined &&
    token.mark !== 'circuit' &&
    (token.text.length === 1 || /^\d{1,3}$/.test(token.text) || token.mark === 'probe')
  );
}

/** Most cases of one line-up that one control loop serves; more under one name are several circuits. */
const mostProbes = 8;

function scoreOf(
  groups: readonly NameGroup[],
  airCount: number,
  others: readonly NamedColumn[],
  keysOfOthers: readonly string[],
): number {
  const share = (count: number, of: number): number => (of === 0 ? 0 : count / of);
  const goodSize = groups.filter(({ air }) => air.length >= 2 && air.length <= mostProbes);
  const inGoodSize = goodSize.reduce((sum, { air }) => sum + air.length, 0);
  const distinctPlaces = groups.filter(
    ({ air }) => new Set(air.map((probe) => `${probe.column.role}${probe.position}`)).size === air.length,
  );
  const keys = new Set(groups.map(({ id }) => id));
  const matched = others.filter((_, index) => keys.has(keysOfOthers[index]!));
  const roleTwice = groups.filter(({ id }) => {
    const here = others.filter((_, index) => keysOfOthers[index] === id).map((column) => column.role);
    return new Set(here).size < here.length;
  });
  const unnamed = groups.filter(({ key, stem }) => key.length === 0 && stem === null && groups.length > 1);
  const misplaced = groups.flatMap(({ air }) => air).filter((probe) => !probe.isPlace);
  const tooLarge = groups.filter(({ air }) => air.length > mostProbes);
  return (
    1.5 * share(matched.length, others.length) +
    0.8 * share(inGoodSize, airCount) +
    0.5 * share(distinctPlaces.length, groups.length) -
    0.5 * share(roleTwice.length, groups.length) -
    share(misplaced.length, airCount) -
    0.5 * share(unnamed.length, groups.length) -
    0.4 * share(tooLarge.length, groups.length) -
    0.1 * share(groups.length, airCount)
  );
}
