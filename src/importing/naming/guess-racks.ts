import { groupedBy } from '../points/grouped-by.ts';
import type { SiteRack, SiteSuctionGroup } from '../site-file/site-file.ts';
import type { GuessedCircuit } from './guess-circuits.ts';
import type { GuessNote } from './guess-note.ts';
import { feedingGroups, frozenBelowCelsius, type Membership } from './membership.ts';
import { byNaturalOrder } from './natural-order.ts';
import type { NamedColumn, Role } from './role.ts';
import { someNames } from './some-names.ts';
import { type RackGroup, suctionGroupsOf } from './suction-groups.ts';

export interface GuessedRacks {
  readonly racks: readonly SiteRack[];
  /** Suction group by circuit id. */
  readonly groupOf: ReadonlyMap<string, string>;
  readonly notes: readonly GuessNote[];
  readonly questions: readonly string[];
}

/** Racks and suction groups from suction pressures and compressors, and which circuits each feeds. */
export function guessRacks(
  columns: readonly NamedColumn[],
  circuits: readonly GuessedCircuit[],
  circuitsInCelsius: ReadonlyMap<string, number>,
): GuessedRacks {
  const { groups, homeless } = suctionGroupsOf(columns);
  const membership = feedingGroups(groups, circuits, circuitsInCelsius);
  const classed = groups.map((group) => classOfMembers(group, membership, circuitsInCelsius));
  const racks = [...groupedBy(classed, (group) => group.rack)]
    .map(([id, members]): SiteRack => ({ id, suctionGroups: members.map(groupEntry) }))
    .sort((a, b) => byNaturalOrder(a.id, b.id));
  const notes = [...classed.flatMap(notesOf), ...membership.notes];
  const questions = [...membership.questions];
  if (homeless.length > 0) {
    questions.push(
      `Which suction group do ${someNames(homeless.map((column) => column.point.name))} belong to?`,
    );
  }
  const doubtful = groups
    .flatMap(({ owned }) => owned)
    .filter(({ role, confidence }) => role === 'compressor' && confidence < 0.5);
  if (doubtful.length > 0) {
    questions.push(`Is this a compressor: ${someNames(doubtful.map((column) => column.point.name))}?`);
  }
  const placeless = columns.filter(
    ({ kind, role, confidence }) => kind === 'pressure' && role === 'other' && confidence < 0.5,
  );
  if (placeless.length > 0) {
    questions.push(
      `Where do ${someNames(placeless.map((column) => column.point.name))} measure: suction or discharge?`,
    );
  }
  return { racks, groupOf: membership.groupOf, notes, questions };
}

/** A group that neither its name nor its pressure classes is of the class of what it feeds. */
function classOfMembers(
  group: RackGroup,
  { groupOf }: Membership,
  airInCelsius: ReadonlyMap<string, number>,
): RackGroup {
  if (group.class !== null) return group;
  const fed = [...groupOf]
    .filter(([, id]) => id === group.id)
    .map(([circuit]) => airInCelsius.get(circuit) ?? Number.NaN);
  const frozen = fed.filter((celsius) => celsius < frozenBelowCelsius).length;
  if (fed.length === 0 || (frozen > 0 && frozen < fed.length) || fed.some(Number.isNaN)) return group;
  return {
    ...group,
    class: frozen > 0 ? 'low' : 'medium',
    classBecause: `all its circuits stand where ${frozen > 0 ? 'frozen' : 'chilled'} ones do`,
  };
}

function groupEntry({ id, class: temperatureClass, suction, owned }: RackGroup): SiteSuctionGroup {
  const names = (role: Role): string[] =>
    owned
      .filter((column) => column.role === role)
      .map((column) => column.point.name)
      .sort(byNaturalOrder);
  const setPoint = names('suction-set-point')[0];
  const discharge = names('discharge-pressure')[0];
  const liquidLevel = names('liquid-level')[0];
  const compressors = names('compressor');
  return {
    id,
    ...(temperatureClass === null ? {} : { class: temperatureClass }),
    ...(suction === null ? {} : { pressure: suction.point.name }),
    ...(setPoint === undefined ? {} : { pressureSetPoint: { point: setPoint } }),
    ...(compressors.length === 0 ? {} : { compressors }),
    ...(discharge === undefined ? {} : { discharge }),
    ...(liquidLevel === undefined ? {} : { liquidLevel }),
  };
}

function notesOf({
  id,
  rack,
  suction,
  owned,
  class: temperatureClass,
  classBecause,
}: RackGroup): GuessNote[] {
  const path = ['racks', rack, 'suctionGroups', id];
  const places: Readonly<{ [role in Role]?: string }> = {
    'suction-pressure': 'pressure',
    'suction-set-point': 'pressureSetPoint',
    compressor: 'compressors',
    'discharge-pressure': 'discharge',
    'liquid-level': 'liquidLevel',
  };
  return [
    ...(temperatureClass === null
      ? []
      : [{ path: [...path, 'class'], confidence: 0.85, because: classBecause }]),
    ...[...(suction === null ? [] : [suction]), ...owned].map((column) => ({
      path: [...path, places[column.role] ?? column.role],
      confidence: column.confidence,
      because: column.because,
    })),
  ];
}
