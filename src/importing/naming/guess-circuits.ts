import type { SiteCircuit } from '../site-file/site-file.ts';
import { type CircuitGroups, circuitGroups } from './circuit-groups.ts';
import { circuitNotes, circuitQuestions } from './circuit-notes.ts';
import type { GuessNote } from './guess-note.ts';
import { Movements } from './movements.ts';
import type { NameGroup, PlacedProbe } from './name-groups.ts';
import { byNaturalOrder } from './natural-order.ts';
import { ownersByName } from './owners.ts';
import { residualOf } from './residual.ts';
import type { NamedColumn, Role } from './role.ts';
import { ownerByBehaviour } from './status-owners.ts';

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
    questions: circuitQuestions(circuits, grouping, others, owners, movements),
    confidence: grouping.confidence,
  };
}

/** By name first; states whose name leads nowhere by what they do to the air. */
function ownersOf(
  grouping: CircuitGroups,
  others: readonly NamedColumn[],
  columns: readonly NamedColumn[],
  movements: Movements,
): Map<NameGroup, NamedColumn[]> {
  const owners = grouping.byBehaviour ? new Map<NameGroup, NamedColumn[]>() : ownersByName(grouping, others);
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

/** Names made short by what all of them begin with (`Store 12/Rack A/`), and unique. */
function circuitIds(groups: readonly NameGroup[]): Map<NameGroup, string> {
  const inOrder = [...groups].sort((a, b) => byNaturalOrder(a.id, b.id));
  const shared = sharedPath(inOrder.map((group) => group.name));
  const taken = new Set<string>();
  return new Map(inOrder.map((group) => [group, uniqueId(group.name.slice(shared), taken)] as const));
}

function sharedPath(names: readonly string[]): number {
  const [first, ...rest] = names;
  if (first === undefined || rest.length === 0) return 0;
  let shared = 0;
  for (let at = 0; at < first.length; at++) {
    if (!rest.every((name) => name[at] === first[at])) break;
    if (/[/\\|:>]/.test(first[at]!)) shared = at + 1;
  }
  return shared;
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

function circuitOf(group: NameGroup, owned: readonly NamedColumn[], id: string): SiteCircuit {
  const names = (role: Role): string[] =>
    owned
      .filter((column) => column.role === role)
      .map((column) => column.point.name)
      .sort(byNaturalOrder);
  const list = (key: 'returnAir' | 'coilOut' | 'product' | 'defrostTermination', role: Role) =>
    names(role).length === 0 ? {} : { [key]: names(role) };
  const surest = (role: Role): string | undefined => {
    const best = Math.max(
      ...owned.filter((column) => column.role === role).map(({ confidence }) => confidence),
    );
    return names(role).find((name) =>
      owned.some((column) => column.point.name === name && column.confidence === best),
    );
  };
  const setPoint = surest('set-point');
  const valve = surest('valve');
  const superheat = surest('superheat');
  const differential = owned.find((column) => column.role === 'differential')?.facts.median;
  const defrost = surest('defrost');
  return {
    id,
    ...(setPoint === undefined ? {} : { setPoint: { point: setPoint } }),
    ...(differential === undefined || !(differential >= 0) ? {} : { differential }),
    probes: inPlaceOrder(group.air).map((probe) => probe.column.point.name),
    ...list('returnAir', 'return-air'),
    ...list('coilOut', 'coil-out'),
    ...list('product', 'product'),
    ...list('defrostTermination', 'defrost-termination'),
    ...(valve === undefined ? {} : { valve }),
    ...(superheat === undefined ? {} : { superheat }),
    ...(defrost === undefined ? {} : { defrost: { status: defrost } }),
  };
}

const placeOrder = [
  'left',
  'links',
  'gauche',
  'izquierda',
  'sinistra',
  'center',
  'centre',
  'middle',
  'mitte',
  'milieu',
  'centro',
];

/** Left to right where words or L, C, R say so, else by number or letter. */
function inPlaceOrder(air: readonly PlacedProbe[]): PlacedProbe[] {
  const places = new Set(air.map((probe) => probe.position));
  const order = places.has('l') && places.has('r') ? ['l', 'c', 'm', 'r'] : placeOrder;
  const rank = (place: string): number => {
    const at = order.indexOf(place);
    return at < 0 ? order.length : at;
  };
  return [...air].sort((a, b) => byPlace(a, b, rank));
}

function byPlace(a: PlacedProbe, b: PlacedProbe, rank: (place: string) => number): number {
  return (
    rank(a.position) - rank(b.position) ||
    byNaturalOrder(a.position, b.position) ||
    byNaturalOrder(a.column.point.name, b.column.point.name)
  );
}

function rackOf({ air }: NameGroup): string | null {
  const token = residualOf(air[0]!.column).find(({ mark }) => mark === 'rack');
  return token?.written.toUpperCase() ?? null;
}

function medianOf(group: NameGroup): number {
  const medians = group.air.map((probe) => probe.column.facts.median).sort((a, b) => a - b);
  return medians[medians.length >> 1] ?? Number.NaN;
}

function uniqueId(wanted: string, taken: Set<string>): string {
  let id = wanted;
  for (let number = 2; taken.has(id); number++) id = `${wanted} (${number})`;
  taken.add(id);
  return id;
}
