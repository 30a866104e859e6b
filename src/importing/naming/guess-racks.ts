import { groupedBy } from '../assembling/grouped-by.ts';
import type { SiteRack, SiteSuctionGroup } from '../site-file/site-file.ts';
import type { GuessedCircuit } from './guess-circuits.ts';
import type { GuessNote } from './guess-site.ts';
import { feedingGroups } from './membership.ts';
import { byNaturalOrder } from './natural-order.ts';
import type { NamedColumn, Role } from './role.ts';
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
  const racks = [...groupedBy(groups, (group) => group.rack)]
    .map(([id, members]): SiteRack => ({ id, suctionGroups: members.map(groupEntry) }))
    .sort((a, b) => byNaturalOrder(a.id, b.id));
  const notes = [...groups.flatMap(notesOf), ...membership.notes];
  const questions = [...membership.questions];
  if (homeless.length > 0) {
    questions.push(
      `Which suction group do ${someNames(homeless.map((column) => column.point.name))} belong to?`,
    );
  }
  return { racks, groupOf: membership.groupOf, notes, questions };
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

export function someNames(names: readonly string[]): string {
  return names.length <= 4
    ? names.join(', ')
    : `${names.slice(0, 3).join(', ')} and ${names.length - 3} more`;
}
