import type { LookAlikeName } from '../fault-catalogue.ts';
import type { Random } from '../random.ts';
import type { LookAlike } from '../simulated-store.ts';
import type { CircuitDisturbance, GroupDisturbance } from './effects.ts';
import * as circuitFault from './faults/circuit.ts';
import * as groupFault from './faults/group.ts';
import { lyingProbe } from './faults/place.ts';
import type { StoreParameters } from './parameters.ts';
import type { WeatherWishes } from './surroundings.ts';

/** What a look-alike does; times in minutes since the start of the log. */
export interface PlannedLookAlike {
  readonly circuits: readonly { readonly id: string; readonly disturb: CircuitDisturbance }[];
  readonly groups: readonly { readonly id: string; readonly disturb: GroupDisturbance }[];
  readonly weather: WeatherWishes;
  readonly truth: LookAlike;
}

export function planLookAlike(
  what: LookAlikeName,
  store: StoreParameters,
  days: number,
  random: Random,
  busy: ReadonlySet<string>,
  day?: number,
): PlannedLookAlike {
  const free = store.groups[0]!.circuits.filter((circuit) => !busy.has(circuit.id));
  const circuit = random.pick(free.length > 0 ? free : store.groups[0]!.circuits);
  const from = Math.round((day ?? random.between(0.3, 0.65) * days) * 1440);
  const nothing = { circuits: [], groups: [], weather: {}, truth: { what, circuit: null, from, to: null } };
  const onOne = (disturb: CircuitDisturbance, start = from, to: number | null = null): PlannedLookAlike => ({
    ...nothing,
    circuits: [{ id: circuit.id, disturb }],
    truth: { what, circuit: circuit.id, from: start, to },
  });
  switch (what) {
    case 'set-point-change': {
      const kelvin = (random.pick([-3, -2, 2, 3]) * 5) / 9;
      return onOne(circuitFault.movedSetPoint(from, Number.POSITIVE_INFINITY, kelvin));
    }
    case 'old-offset':
      return onOne(
        lyingProbe(random.whole(0, circuit.sections - 1), -Infinity, 0, random.pick([-1.1, 1.1])),
        0,
      );
    case 'heavy-stocking': {
      const spells = Array.from({ length: 5 }, () => {
        const start = random.whole(1, days - 1) * 1440 + random.whole(420, 1200);
        return [start, start + random.whole(30, 80)] as const;
      });
      return onOne(circuitFault.extraLoad(spells, 0.6), 0);
    }
    case 'weekend-trade': {
      const firstSaturday = 3;
      const spells = Array.from({ length: Math.ceil(days / 7) }, (_, week) => {
        const start = (firstSaturday + 7 * week) * 1440 + 540;
        return [
          [start, start + 600],
          [start + 1440, start + 2040],
        ] as const;
      }).flat();
      return onOne(circuitFault.extraLoad(spells, 0.12), 0);
    }
    case 'night-set-back':
      return onOne(circuitFault.nightSetBack(1380, 300, 0.83), 0);
    case 'humid-week': {
      const day = from / 1440;
      return {
        ...nothing,
        weather: { humidDays: [day, day + 7] },
        truth: { ...nothing.truth, to: from + 7 * 1440 },
      };
    }
    case 'warm-spell': {
      const day = from / 1440;
      return {
        ...nothing,
        weather: { warmDays: [day, day + 6] },
        truth: { ...nothing.truth, to: from + 6 * 1440 },
      };
    }
    case 'service-visit': {
      const start = day === undefined ? Math.floor(from / 1440) * 1440 + random.whole(480, 840) : from;
      const end = start + random.whole(90, 200);
      const group = store.groups[0]!;
      return {
        ...nothing,
        circuits: group.circuits.map(({ id }) => ({
          id,
          disturb: circuitFault.forced('off', start + 5, end),
        })),
        groups: [{ id: group.id, disturb: groupFault.serviceVisit(start, end) }],
        truth: { what, circuit: null, from: start, to: end },
      };
    }
    case 'float-at-limit':
      return {
        ...nothing,
        groups: [{ id: store.groups[0]!.id, disturb: groupFault.floatAtLowest(from) }],
      };
    case 'schedule-edit':
      return onOne(circuitFault.clockAhead(from, 60 * random.whole(1, 2) + 30));
    case 'set-point-restored': {
      const start = Math.floor(from / 1440) * 1440 + random.whole(480, 840);
      const end = start + random.whole(90, 150);
      return onOne(circuitFault.workedOn(start, end, end + 20, random.pick([-1.7, 1.7])), start, end + 20);
    }
    case 'in-step-by-night': {
      const isNight = (minute: number): boolean => (minute + 1440) % 1440 < 300;
      return {
        ...nothing,
        circuits: store.groups[0]!.circuits.map(({ id }) => ({
          id,
          disturb: circuitFault.pulsedInStep(16, isNight),
        })),
      };
    }
    case 'long-gap':
    case 'not-connected':
      return nothing;
  }
}
