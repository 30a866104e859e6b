import { groupedBy } from '../points/grouped-by.ts';
import { sharedPath } from './circuit-ids.ts';
import { writtenName } from './circuit-name.ts';
import { byNaturalOrder } from './natural-order.ts';
import { isSubsequence } from './owners.ts';
import { type ResidualToken, residualOf } from './residual.ts';
import type { NamedColumn, Role } from './role.ts';

export interface RackGroup {
  readonly id: string;
  readonly rack: string;
  /** Words that name it; empty where nothing does. */
  readonly key: readonly string[];
  /** Its file, where the racks are told apart by their files; else null. */
  readonly file: string | null;
  readonly class: 'medium' | 'low' | null;
  readonly classBecause: string;
  readonly suction: NamedColumn | null;
  readonly owned: NamedColumn[];
}

const ownedRoles: ReadonlySet<Role> = new Set<Role>([
  'suction-set-point',
  'compressor',
  'discharge-pressure',
  'liquid-level',
]);
/** More suction pressures than this are those of single circuits, not of suction groups. */
const mostGroups = 8;

/** One group a suction pressure, or one a name of compressors where no suction pressure is logged. */
export function suctionGroupsOf(columns: readonly NamedColumn[]): {
  groups: RackGroup[];
  homeless: NamedColumn[];
} {
  const suctions = columns.filter(({ role }) => role === 'suction-pressure');
  const owned = columns.filter(({ role }) => ownedRoles.has(role));
  const groups =
    suctions.length > 0 && suctions.length <= mostGroups
      ? (byFile(suctions) ?? fromSuctions(suctions))
      : fromCompressors(owned);
  const homeless: NamedColumn[] = [];
  for (const column of owned) {
    const owners = ownersOf(column, groups);
    if (owners.length === 0 && groups.length > 0) homeless.push(column);
    for (const owner of owners) owner.owned.push(column);
  }
  return { groups: groups.map((group) => withClass(group, groups)), homeless };
}

/** Racks that one file each logs under the same headers: `Rack A.csv` and `Rack B.csv` both with `Suction`. */
function byFile(suctions: readonly NamedColumn[]): RackGroup[] | null {
  const keys = new Set(suctions.map((column) => wordsOf(column).join(' ')));
  const stems = new Set(suctions.map(({ point }) => point.fileStems[0]));
  const alone = suctions.every(({ point }) => point.fileStems.length === 1);
  if (suctions.length < 2 || keys.size > 1 || stems.size < suctions.length || !alone) return null;
  const taken = new Set<string>();
  return [...suctions]
    .sort((a, b) => byNaturalOrder(a.point.name, b.point.name))
    .map((column) => ({
      ...groupOf(unused(column.point.fileStems[0]!, taken), keyOf(column), column),
      file: column.point.fileStems[0]!,
    }));
}

function wordsOf(column: NamedColumn): string[] {
  return keyOf(column).map((token) => token.text);
}

function fromSuctions(suctions: readonly NamedColumn[]): RackGroup[] {
  const taken = new Set<string>();
  const shared = sharedPath(suctions.map((column) => writtenName(column, keyOf(column))));
  const sorted = [...suctions].sort((a, b) => byNaturalOrder(a.point.name, b.point.name));
  return sorted.map((column) => {
    const key = keyOf(column);
    return groupOf(unused(groupName(column, key).slice(shared).trim(), taken), key, column);
  });
}

function fromCompressors(owned: readonly NamedColumn[]): RackGroup[] {
  const compressors = owned.filter(({ role }) => role === 'compressor');
  const byName = groupedBy(compressors, (column) =>
    keyOf(column)
      .map((token) => token.text)
      .join(' '),
  );
  const taken = new Set<string>();
  return [...byName.values()]
    .map((members) =>
      groupOf(unused(groupName(members[0]!, keyOf(members[0]!)), taken), keyOf(members[0]!), null),
    )
    .sort((a, b) => byNaturalOrder(a.id, b.id));
}

function groupOf(id: string, key: readonly ResidualToken[], suction: NamedColumn | null): RackGroup {
  return {
    id,
    rack: key.find((token) => token.mark === 'rack')?.written.toUpperCase() ?? 'A',
    key: key.map((token) => token.text),
    file: null,
    class: null,
    classBecause: '',
    suction,
    owned: [],
  };
}

function groupName(column: NamedColumn, key: readonly ResidualToken[]): string {
  const name = writtenName(column, key);
  return /^\d+$/.test(name) ? `S${name}` : name;
}

function keyOf(column: NamedColumn): ResidualToken[] {
  return residualOf(column).filter((token) => token.mark !== 'probe');
}

function unused(wanted: string, taken: Set<string>): string {
  let id = wanted;
  for (let number = 1; id === '' || taken.has(id); number++)
    id = `${wanted === '' ? 'S' : `${wanted} `}${number}`;
  taken.add(id);
  return id;
}

/** The groups whose name the column carries; a discharge or receiver without a name serves every group of its rack. */
function ownersOf(column: NamedColumn, groups: readonly RackGroup[]): readonly RackGroup[] {
  if (groups.length <= 1) return groups;
  const inFile = groups.filter(({ file }) => file !== null && column.point.fileStems.includes(file));
  if (inFile.length > 0) return inFile;
  const key = keyOf(column);
  const words = wordsOf(column);
  const exact = groups.filter((group) => group.key.join(' ') === words.join(' '));
  if (exact.length === 1) return exact;
  const named = groups.filter((group) => group.key.length > 0 && isSubsequence(group.key, words));
  const longest = Math.max(...named.map((group) => group.key.length));
  const best = named.filter((group) => group.key.length === longest);
  if (best.length === 1) return best;
  if (column.role !== 'discharge-pressure' && column.role !== 'liquid-level') return [];
  const rack = key.find((token) => token.mark === 'rack')?.written.toUpperCase();
  return groups.filter((group) => rack === undefined || group.rack === rack);
}

/** Medium or low by the words of its name, else of two groups of one rack the lower pressure is the colder. */
function withClass(group: RackGroup, groups: readonly RackGroup[]): RackGroup {
  const meanings = new Set(group.suction?.tokens.map((token) => token.meaning));
  if (meanings.has('medium'))
    return { ...group, class: 'medium', classBecause: 'its name says medium temperature' };
  if (meanings.has('low')) return { ...group, class: 'low', classBecause: 'its name says low temperature' };
  const pressures = groups
    .filter((other) => other.suction !== null && other.suction.point.unit === group.suction?.point.unit)
    .map((other) => other.suction!.facts.median);
  const own = group.suction?.facts.median ?? Number.NaN;
  const lowest = Math.min(...pressures);
  const highest = Math.max(...pressures);
  if (pressures.length < 2 || !(highest > 1.6 * Math.max(lowest, 0) && highest - lowest > 0)) return group;
  const low = Math.abs(own - lowest) < Math.abs(own - highest);
  return {
    ...group,
    class: low ? 'low' : 'medium',
    classBecause: `its suction pressure is among the ${low ? 'lower' : 'higher'} ones of the export`,
  };
}
