import type { SiteCircuit } from '../site-file/site-file.ts';
import { circuitName } from './circuit-name.ts';
import type { GuessNote } from './guess-site.ts';
import { groupByName, type NameGroup, type PlacedProbe } from './name-groups.ts';
import { byNaturalOrder } from './natural-order.ts';
import { ownersByName } from './owners.ts';
import type { NamedColumn, Role } from './role.ts';

export interface GuessedCircuit {
  readonly circuit: SiteCircuit;
  readonly group: NameGroup;
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

/** Circuits from the columns: air probes grouped by name, the other columns of a circuit brought to them. */
export function guessCircuits(columns: readonly NamedColumn[]): GuessedCircuits {
  const air = airColumns(columns);
  const others = columns.filter((column) => circuitRoles.has(column.role) && !air.includes(column));
  const grouping = groupByName(air, others);
  const owners = ownersByName(grouping, others);
  const taken = new Set<string>();
  const circuits = grouping.groups.map((group) => {
    const owned = owners.get(group) ?? [];
    return { circuit: circuitOf(group, owned, uniqueId(circuitName(group), taken)), group, owned };
  });
  circuits.sort((a, b) => byNaturalOrder(a.circuit.id, b.circuit.id));
  const notes = circuits.flatMap(({ circuit, group, owned }) =>
    notesOf(circuit, group, owned, grouping.because),
  );
  const homeless = others.filter((column) => ![...owners.values()].some((owned) => owned.includes(column)));
  return {
    circuits: circuits.map(({ circuit, group }) => ({ circuit, group, medianAir: medianOf(group) })),
    notes,
    questions: homeless.length === 0 ? [] : [`Which circuit do ${namesOf(homeless)} belong to?`],
    confidence: Math.min(0.99, Math.max(0.2, grouping.score / 2.6)),
  };
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
  const setPoint = names('set-point')[0];
  const valve = names('valve')[0];
  const superheat = names('superheat')[0];
  const defrost = names('defrost')[0];
  return {
    id,
    ...(setPoint === undefined ? {} : { setPoint: { point: setPoint } }),
    probes: [...group.air].sort(byPlace).map((probe) => probe.column.point.name),
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

function byPlace(a: PlacedProbe, b: PlacedProbe): number {
  const rank = (place: string): number => {
    const at = placeOrder.indexOf(place);
    return at < 0 ? placeOrder.length : at;
  };
  return (
    rank(a.position) - rank(b.position) ||
    byNaturalOrder(a.position, b.position) ||
    byNaturalOrder(a.column.point.name, b.column.point.name)
  );
}

function notesOf(
  circuit: SiteCircuit,
  group: NameGroup,
  owned: readonly NamedColumn[],
  because: string,
): GuessNote[] {
  const path = `circuits.${circuit.id}`;
  const sureness = Math.min(...group.air.map((probe) => probe.column.confidence));
  return [
    { path: `${path}.probes`, confidence: sureness, because },
    ...owned.map((column) => ({
      path: `${path}.${column.role}`,
      confidence: column.confidence,
      because: `${column.point.name}: ${column.because}`,
    })),
  ];
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

function namesOf(columns: readonly NamedColumn[]): string {
  const names = columns.map((column) => column.point.name);
  return names.length <= 4
    ? names.join(', ')
    : `${names.slice(0, 3).join(', ')} and ${names.length - 3} more`;
}
