import type { LookAlikeName } from '../fault-catalogue.ts';
import type { Random } from '../random.ts';
import type { LookAlike } from '../simulated-store.ts';
import type { GroupHabits } from './parameters.ts';
import type { CircuitSymptom, GroupSymptom } from './symptoms.ts';

/** Times in minutes since the start of the log. */
export interface PlannedLookAlike {
  readonly circuits: readonly { readonly id: string; readonly apply: CircuitSymptom }[];
  readonly groups: readonly { readonly id: string; readonly apply: GroupSymptom }[];
  readonly humidDays: readonly [number, number] | null;
  readonly warmDays: readonly [number, number] | null;
  readonly truth: LookAlike;
}

export function planLookAlike(
  what: LookAlikeName,
  group: GroupHabits,
  days: number,
  random: Random,
  busy: ReadonlySet<string>,
  day?: number,
): PlannedLookAlike {
  const free = group.circuits.filter((circuit) => !busy.has(circuit.id));
  const circuit = random.pick(free.length > 0 ? free : group.circuits);
  const from =
    day === undefined
      ? Math.round(random.between(0.25, 0.65) * days) * 1440 + random.whole(420, 900)
      : Math.round(day * 1440);
  const plain: PlannedLookAlike = {
    circuits: [],
    groups: [],
    humidDays: null,
    warmDays: null,
    truth: { what, circuit: null, from, to: null },
  };
  const onOne = (apply: CircuitSymptom, start = from): PlannedLookAlike => ({
    ...plain,
    circuits: [{ id: circuit.id, apply }],
    truth: { what, circuit: circuit.id, from: start, to: null },
  });
  const spells = (count: number, length: number): (readonly [number, number])[] =>
    Array.from({ length: count }, () => {
      const start = random.whole(1, days - 1) * 1440 + random.whole(420, 1200);
      return [start, start + length] as const;
    });
  switch (what) {
    case 'set-point-change': {
      const kelvin = random.pick([-1.5, -1, 1, 1.5]);
      return onOne((symptoms, minute) => {
        if (minute >= from) symptoms.setPointShift = kelvin;
      });
    }
    case 'old-offset': {
      const place = random.whole(0, circuit.offsets.length - 1);
      const kelvin = random.pick([-1.1, 1.1]);
      return onOne((symptoms) => {
        symptoms.rise[place] = kelvin;
      }, 0);
    }
    case 'heavy-stocking': {
      const heavy = spells(6, random.whole(30, 70));
      return onOne((symptoms, minute) => {
        if (heavy.some(([start, end]) => minute >= start && minute < end)) symptoms.unreachable = 2.2;
      }, 0);
    }
    case 'weekend-trade':
      return onOne((symptoms, minute, clock) => {
        if (Math.floor(minute / 1440) % 7 >= 5 && clock > 540 && clock < 1200) symptoms.unreachable = 0.6;
      }, 0);
    case 'night-set-back':
      return onOne((symptoms, _, clock) => {
        if (clock >= 1320 || clock < 330) symptoms.setPointShift = 1;
      }, 0);
    case 'humid-week':
      return {
        ...plain,
        humidDays: [from / 1440, from / 1440 + 7],
        truth: { ...plain.truth, to: from + 10_080 },
      };
    case 'warm-spell':
      return {
        ...plain,
        warmDays: [from / 1440, from / 1440 + 6],
        truth: { ...plain.truth, to: from + 8640 },
      };
    case 'service-visit': {
      const end = from + random.whole(80, 180);
      const during = (minute: number): boolean => minute >= from && minute < end;
      return {
        ...plain,
        circuits: group.circuits.map(({ id }) => ({
          id,
          apply: (symptoms, minute) => {
            if (during(minute)) symptoms.forced = 'off';
          },
        })),
        groups: [
          {
            id: group.id,
            apply: (symptoms, minute) => {
              if (during(minute)) symptoms.pulledDown = true;
            },
          },
        ],
        truth: { ...plain.truth, to: end },
      };
    }
    case 'float-at-limit':
      return {
        ...plain,
        groups: [
          {
            id: group.id,
            apply: (symptoms, minute) => {
              if (minute >= from) symptoms.floatAtLowest = true;
            },
          },
        ],
      };
    case 'schedule-edit': {
      const minutes = 30 * random.whole(3, 5);
      return onOne((symptoms, minute) => {
        if (minute >= from) symptoms.clockAhead = minutes;
      });
    }
    case 'set-point-restored': {
      const end = from + random.whole(80, 150);
      const kelvin = random.pick([-1.7, 1.7]);
      return onOne((symptoms, minute) => {
        if (minute < from || minute >= end + 20) return;
        symptoms.setPointShift = kelvin;
        if (minute < end) symptoms.forced = 'off';
      });
    }
    case 'in-step-by-night':
      return {
        ...plain,
        circuits: group.circuits.map(({ id }) => ({
          id,
          apply: (symptoms, _, clock) => {
            if (clock >= 300) return;
            symptoms.period = 16;
            symptoms.inStep = true;
          },
        })),
      };
    case 'long-gap':
    case 'not-connected':
      return plain;
  }
}
