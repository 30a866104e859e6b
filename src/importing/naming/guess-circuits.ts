import type { SiteCircuit } from '../site-file/site-file.ts';
import { circuitOf } from './circuit-entry.ts';
import { type CircuitGroups, circuitGroups } from './circuit-groups.ts';
import { circuitIds } from './circuit-ids.ts';
import { circuitNotes, circuitQuestions } from './circuit-notes.ts';
import type { GuessNote } from './guess-note.ts';
import { Movements } from './movements.ts';
import type { NameGroup } from './name-groups.ts';
import { byNaturalOrder } from './natural-order.ts';
import { ownersByName } from './owners.ts';
import { residualOf } from './residual.ts';
import type { NamedColumn, Role } from './role.ts';
import { someNames } from './some-names.ts';
import { ownerByBehaviour } from './status-owners.ts';
import { unreadColumns } from './unread-columns.ts';
import { unusedAir } from './unused-air.ts';

export interface GuessedCircuit {
  readonly circuit: SiteCircuit;
  readonly group: NameGroup;
  /** The rack that its name says, or null. */
  readonly rack: string | null;
  /** Median air, in the export's own numbers, for the temperature class. */
  readonly medianAir: number;
}

export interface GuessedCircuits {
  readonly circuits: readonly GuessedCircuit[];
  readonly notes: readonly GuessNote[];
  readonly questions: readonly string[];
  readonly confidence: number;
}

const circuitRoles: ReadonlySet<Role> = new Set<Role>([
  'return-air',
  'coil-out',
  'product',
  'defrost-termination',
  'control-temperature',
  'set-point',
  'differential',
  'defrost',
  'valve',
  'superheat',
]);

/** Circuits from the columns: air probes grouped, the other columns of a circuit brought to them. */
export function guessCircuits(columns: readonly NamedColumn[]): GuessedCircuits {
  const air = airColumns(columns);
  const isAir = new Set(air);
  const others = columns.filter((column) => circuitRoles.has(column.role) && !isAir.has(column));
  const movements = new Movements(columns.map(({ point }) => point));
  const grouping = circuitGroups(air, others, movements);
  const owners = ownersOf(grouping, others, columns, movements);
  const names = circuitIds(grouping.groups);
  const circuits = grouping.groups
    .map((group) => {
      const owned = owners.get(group) ?? [];
      return { circuit: circuitOf(group, owned, names.get(group)!), group, owned };
    })
    .sort((a, b) => byNaturalOrder(a.circuit.id, b.circuit.id));
  return {
    circuits: circuits.map(({ circuit, group }) => ({
      circuit,
      group,
      rack: rackOf(group),
      medianAir: medianOf(group),
    })),
    notes: circuits.flatMap(({ circuit, group, owned }) => circuitNotes(circuit, group, owned, grouping)),
    questions: [
      ...unusedQuestion(columns, air),
      ...unreadQuestion(columns, grouping, owners),
      ...circuitQuestions(circuits, grouping, others, owners, movements),
    ],
    confidence: grouping.confidence,
  };
}

function unusedQuestion(columns: readonly NamedColumn[], air: readonly NamedColumn[]): string[] {
  const unused = unusedAir(columns, air);
  if (unused.length === 0) return [];
  const names = someNames(unused.map(({ point }) => point.name));
  return [
    `What do ${names} measure? They read and swing as the air of a case does, and no circuit has them.`,
  ];
}

function unreadQuestion(
  columns: readonly NamedColumn[],
  { groups }: CircuitGroups,
  owners: ReadonlyMap<NameGroup, readonly NamedColumn[]>,
): string[] {
  const used = new Set([...owners.values()].flat().map(({ point }) => point));
  const unread = unreadColumns(columns, groups, used);
  if (unread.length === 0) return [];
  const names = someNames(unread.map(({ point }) => point.name));
  return [
    `What are ${names}? They carry the name of a circuit; write them under it in the site file (setPoint, defrost.status, valve) if that is what they are.`,
  ];
}

/** By name first; states whose name leads nowhere by what they do to the air. */
function ownersOf(
  grouping: CircuitGroups,
  others: readonly NamedColumn[],
  columns: readonly NamedColumn[],
  movements: Movements,
): Map<NameGroup, NamedColumn[]> {
  const nameless = grouping.groups.every(({ key }) => key.length === 0);
  const owners =
    grouping.byBehaviour && nameless ? new Map<NameGroup, NamedColumn[]>() : ownersByName(grouping, others);
  const owned = new Set([...owners.values()].flat());
  const homeless = columns.filter((column) => mayMoveAir(column) && !owned.has(column));
  if (homeless.length * grouping.groups.length > mostCompared) return owners;
  for (const column of homeless) {
    const owner = ownerByBehaviour(column, grouping.groups, movements);
    if (owner === null) continue;
    const { role, confidence, because } = owner;
    owners.set(owner.group, [...(owners.get(owner.group) ?? []), { ...column, role, confidence, because }]);
  }
  return owners;
}

/** States times circuits: more than any store has, and the comparison would take long. */
const mostCompared = 20_000;

function mayMoveAir({ kind, role, confidence }: NamedColumn): boolean {
  return kind === 'status' && role !== 'compressor' && !(role === 'other' && confidence > 0.5);
}

/** Air probes; where a circuit logs only one temperature that its name calls control or average, that one. */
function airColumns(columns: readonly NamedColumn[]): NamedColumn[] {
  const air = columns.filter((column) => column.role === 'air');
  if (air.length > 0) return air;
  for (const instead of ['control-temperature', 'return-air', 'product'] as const) {
    const found = columns.filter((column) => column.role === instead);
    if (found.length > 0) return found;
  }
  return [];
}

function rackOf({ air }: NameGroup): string | null {
  const token = residualOf(air[0]!.column).find(({ mark }) => mark === 'rack');
  return token?.written.toUpperCase() ?? null;
}

function medianOf(group: NameGroup): number {
  const medians = group.air.map((probe) => probe.column.facts.median).sort((a, b) => a - b);
  return medians[medians.length >> 1] ?? Number.NaN;
}
