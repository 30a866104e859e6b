import type { SiteRack, SiteSuctionGroup } from '../site-file/site-file.ts';
import type { GuessedCircuit } from './guess-circuits.ts';
import type { GuessNote } from './guess-site.ts';
import { byNaturalOrder } from './natural-order.ts';
import { isSubsequence } from './owners.ts';
import { residualOf } from './residual.ts';
import type { NamedColumn, Role } from './role.ts';

export interface GuessedRacks {
  readonly racks: readonly SiteRack[];
  readonly groupOf: ReadonlyMap<string, string>;
  readonly notes: readonly GuessNote[];
  readonly questions: readonly string[];
}

interface Group {
  readonly id: string;
  readonly key: readonly string[];
  readonly suction: NamedColumn | null;
  readonly owned: NamedColumn[];
}

const rackRoles: ReadonlySet<Role> = new Set<Role>([
  'suction-set-point',
  'compressor',
  'discharge-pressure',
  'liquid-level',
]);

/** Suction groups from suction pressures and compressors, and which circuits each feeds. */
export function guessRacks(
  columns: readonly NamedColumn[],
  circuits: readonly GuessedCircuit[],
): GuessedRacks {
  const groups = suctionGroups(columns);
  const questions: string[] = [];
  for (const column of columns.filter(({ role }) => rackRoles.has(role))) {
    for (const owner of ownersOf(column, groups)) owner.owned.push(column);
  }
  const groupOf = membership(groups, circuits);
  const without = circuits.filter(({ circuit }) => !groupOf.has(circuit.id));
  if (groups.length > 0 && without.length > 0) {
    const names = without
      .slice(0, 4)
      .map(({ circuit }) => circuit.id)
      .join(', ');
    questions.push(
      `Which suction group feeds ${names}${without.length > 4 ? ' and others' : ''}: ${groups.map(({ id }) => id).join(' or ')}?`,
    );
  }
  const racks: SiteRack[] = groups.length === 0 ? [] : [{ id: 'A', suctionGroups: groups.map(groupEntry) }];
  return { racks, groupOf, notes: groups.flatMap(notesOf), questions };
}

function suctionGroups(columns: readonly NamedColumn[]): Group[] {
  const suctions = columns.filter(({ role }) => role === 'suction-pressure');
  const sources =
    suctions.length > 0 ? suctions : columns.filter(({ role }) => role === 'compressor').slice(0, 1);
  const taken = new Set<string>();
  return sources
    .map((column, index) => {
      const key = suctions.length > 0 ? residualOf(column).map((token) => token.text) : [];
      let id = key.join('').toUpperCase() || `S${index + 1}`;
      if (taken.has(id)) id = `${id}-${index + 1}`;
      taken.add(id);
      return { id, key, suction: suctions.length > 0 ? column : null, owned: [] };
    })
    .sort((a, b) => byNaturalOrder(a.id, b.id));
}

function ownersOf(column: NamedColumn, groups: readonly Group[]): readonly Group[] {
  if (groups.length <= 1) return groups;
  const words = residualOf(column).map((token) => token.text);
  const named = groups.filter(({ key }) => key.length > 0 && isSubsequence(key, words));
  if (named.length > 0) return named.slice(0, 1);
  return column.role === 'discharge-pressure' || column.role === 'liquid-level' ? groups : [];
}

function membership(groups: readonly Group[], circuits: readonly GuessedCircuit[]): Map<string, string> {
  const groupOf = new Map<string, string>();
  for (const { circuit, group } of circuits) {
    if (groups.length === 1) {
      groupOf.set(circuit.id, groups[0]!.id);
      continue;
    }
    const named = groups.filter(({ key }) => key.length > 0 && isSubsequence(key, group.key));
    if (named.length === 1) groupOf.set(circuit.id, named[0]!.id);
  }
  return groupOf;
}

function groupEntry({ id, suction, owned }: Group): SiteSuctionGroup {
  const names = (role: Role): string[] =>
    owned
      .filter((column) => column.role === role)
      .map((column) => column.point.name)
      .sort(byNaturalOrder);
  const setPoint = names('suction-set-point')[0];
  const discharge = names('discharge-pressure')[0];
  const liquidLevel = names('liquid-level')[0];
  return {
    id,
    ...(suction === null ? {} : { pressure: suction.point.name }),
    ...(setPoint === undefined ? {} : { pressureSetPoint: { point: setPoint } }),
    ...(names('compressor').length === 0 ? {} : { compressors: names('compressor') }),
    ...(discharge === undefined ? {} : { discharge }),
    ...(liquidLevel === undefined ? {} : { liquidLevel }),
  };
}

function notesOf({ id, suction, owned }: Group): GuessNote[] {
  return [...(suction === null ? [] : [suction]), ...owned].map((column) => ({
    path: `racks.${id}.${column.role}`,
    confidence: column.confidence,
    because: `${column.point.name}: ${column.because}`,
  }));
}
