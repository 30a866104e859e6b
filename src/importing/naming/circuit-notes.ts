import type { SiteCircuit } from '../site-file/site-file.ts';
import { type CircuitGroups, movesApart } from './circuit-groups.ts';
import type { GuessNote } from './guess-note.ts';
import type { Movements } from './movements.ts';
import type { NameGroup } from './name-groups.ts';
import type { NamedColumn, Role } from './role.ts';
import { someNames } from './some-names.ts';

const places: Readonly<{ [role in Role]?: string }> = {
  'return-air': 'returnAir',
  'coil-out': 'coilOut',
  product: 'product',
  'defrost-termination': 'defrostTermination',
  'set-point': 'setPoint',
  defrost: 'defrost.status',
  valve: 'valve',
  superheat: 'superheat',
  differential: 'differential',
};

interface Guessed {
  readonly circuit: SiteCircuit;
  readonly group: NameGroup;
  readonly owned: readonly NamedColumn[];
}

/** Why each part of a circuit was guessed so. */
export function circuitNotes(
  circuit: SiteCircuit,
  group: NameGroup,
  owned: readonly NamedColumn[],
  grouping: CircuitGroups,
): GuessNote[] {
  const path = ['circuits', circuit.id];
  const sureness = Math.min(grouping.confidence, ...group.air.map((probe) => probe.column.confidence));
  return [
    { path: [...path, 'probes'], confidence: sureness, because: grouping.because },
    ...owned.flatMap((column) => {
      const place = places[column.role];
      return place === undefined
        ? []
        : [{ path: [...path, ...place.split('.')], confidence: column.confidence, because: column.because }];
    }),
  ];
}

/** What the person who knows the store should say, one sentence each. */
export function circuitQuestions(
  circuits: readonly Guessed[],
  grouping: CircuitGroups,
  others: readonly NamedColumn[],
  owners: ReadonlyMap<NameGroup, readonly NamedColumn[]>,
  movements: Movements,
): string[] {
  const questions: string[] = [];
  if (grouping.byBehaviour) {
    questions.push(
      'The names do not say which columns belong together; are these the probes of each circuit?',
    );
  }
  const homed = new Set([...owners.values()].flat().map((column) => column.point));
  const homeless = others.filter((column) => !homed.has(column.point));
  if (homeless.length > 0) questions.push(`Which circuit do ${namesOf(homeless)} belong to?`);
  if (grouping.leftOver.length > 0) questions.push(`What do ${namesOf(grouping.leftOver)} measure?`);
  const apart = circuits.filter(({ group }) => !grouping.byBehaviour && movesApart(group, movements));
  if (apart.length > 0) {
    const ids = someNames(apart.map(({ circuit }) => circuit.id));
    questions.push(`The probes of ${ids} do not warm and cool together; do they stand in one line-up?`);
  }
  const mostlyOn = [...owners.values()]
    .flat()
    .filter((column) => column.role === 'defrost' && column.facts.onShare > 0.5);
  if (mostlyOn.length > 0) {
    questions.push(`Is ${namesOf(mostlyOn)} on during defrost? It is on most of the time.`);
  }
  return questions;
}

function namesOf(columns: readonly NamedColumn[]): string {
  return someNames(columns.map((column) => column.point.name));
}
