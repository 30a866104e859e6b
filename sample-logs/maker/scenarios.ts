import type { Dialect } from './export/dialect.ts';
import {
  changesDialect,
  continentalDialect,
  longDialect,
  officeDialect,
  plainDialect,
} from './export/dialects.ts';
import { plainNaming } from './naming.ts';
import type { StoreRequest } from './store-request.ts';

/** One shipped sample: a store-month, the dialect it is exported in, and what its README says. */
export interface Scenario {
  readonly folder: string;
  readonly simulator: 'one' | 'two';
  readonly request: StoreRequest;
  readonly dialect: Dialect;
  readonly compressed: boolean;
  readonly title: string;
  readonly planted: string;
}

const every = (dialect: Dialect, intervalMinutes: number): Dialect => ({
  ...dialect,
  logging: { ...dialect.logging, intervalMinutes },
});
const averaged = { sections: 3, controls: 'average', valve: 'on-off', defrostKind: 'off-cycle' } as const;

export const scenarios: readonly Scenario[] = [
  {
    folder: 'iced-end',
    simulator: 'one',
    request: {
      seed: 1101,
      site: 'Quillan Row Foods',
      timeZone: 'America/Denver',
      startDate: '2026-09-01',
      mediumCircuits: 5,
      lowCircuits: 0,
      first: averaged,
      faults: [{ fault: 'iced-end', on: 'M01', place: 0, onsetDay: 10.2, size: 6.5 }],
    },
    dialect: every(plainDialect, 5),
    compressed: false,
    title: 'Ice at one end that the average hides',
    planted:
      'The drain under the first case of line-up M01 is blocked. Melt stays in the pan and freezes again, the air at that end creeps up from the eleventh day on, and because the controller steers on the average of three probes the other two are driven cold while the average stays at its set point. Late in each defrost the iced end is the colder one.',
  },
  {
    folder: 'lying-probe-step',
    simulator: 'one',
    request: {
      seed: 1102,
      site: 'Bramblegate Market',
      timeZone: 'America/Chicago',
      startDate: '2026-04-01',
      mediumCircuits: 4,
      lowCircuits: 0,
      first: averaged,
      faults: [{ fault: 'probe-step', on: 'M01', place: 1, onsetDay: 14.6, size: 5 }],
    },
    dialect: every(officeDialect, 5),
    compressed: false,
    title: 'A probe that lies, from one moment on',
    planted:
      'The middle probe of line-up M01 reads high from the afternoon of the fifteenth day on, by the same amount by day, by night and in defrost. The air did not change there; the controller believes the probe and overcools the whole line-up.',
  },
  {
    folder: 'lying-probe-creep',
    simulator: 'one',
    request: {
      seed: 1103,
      site: 'Ferncastle Stores',
      timeZone: 'Europe/Berlin',
      startDate: '2026-06-01',
      mediumCircuits: 5,
      lowCircuits: 0,
      first: { ...averaged, sections: 4 },
      faults: [{ fault: 'probe-creep', on: 'M01', place: 2, onsetDay: 9, size: 6 }],
    },
    dialect: every(continentalDialect, 2),
    compressed: true,
    title: 'A probe that lies more every day',
    planted:
      'Moisture creeps into the third probe of line-up M01 from the tenth day on, and its reading rises a little every day while the air does not. It looks like ice from afar; in defrost and by night it keeps its distance from its neighbours, which ice would not.',
  },
  {
    folder: 'short-cycling',
    simulator: 'one',
    request: {
      seed: 1104,
      days: 12,
      site: 'Pellow Street Grocery',
      timeZone: 'America/New_York',
      startDate: '2026-05-04',
      mediumCircuits: 3,
      lowCircuits: 0,
      faults: [{ fault: 'compressor-short-cycle', on: 'S1', onsetDay: 5.4 }],
    },
    dialect: { ...plainDialect, time: 'us' },
    compressed: true,
    title: 'A compressor that short-cycles',
    planted:
      'On the sixth day somebody narrowed the pressure band of the last machine of suction group S1 and took its restart delay out. It starts and stops every few minutes from then on; the cases notice nothing.',
  },
  {
    folder: 'slow-recovery',
    simulator: 'two',
    request: {
      seed: 1105,
      site: 'Hollin Green Market',
      timeZone: 'America/Los_Angeles',
      startDate: '2026-08-01',
      mediumCircuits: 3,
      lowCircuits: 0,
      first: averaged,
      faults: [{ fault: 'recovery-lengthening', on: 'M01', onsetDay: 9 }],
    },
    dialect: { ...every(plainDialect, 5), layout: 'file-a-circuit', time: 'us', units: 'row' },
    compressed: false,
    title: 'Recovery that lengthens',
    planted:
      'Line-up M01 takes longer after every defrost to come back to its own level, from the tenth day on. Between defrosts it still holds its set point, so nothing but the recovery and the valve shows it. Each circuit comes as a file of its own.',
  },
  {
    folder: 'suction-rise',
    simulator: 'one',
    request: {
      seed: 1106,
      site: 'Saltmarsh Lane Foods',
      timeZone: 'America/Denver',
      startDate: '2026-10-01',
      mediumCircuits: 5,
      lowCircuits: 3,
      faults: [{ fault: 'suction-rise', on: 'S1', onsetDay: 15.5 }],
    },
    dialect: every({ ...officeDialect, naming: plainNaming }, 5),
    compressed: true,
    title: 'Suction pressure that rises and warms a whole group',
    planted:
      'From the sixteenth day on the suction pressure of group S1 climbs away from its set point, and its line-ups warm together as their evaporators lose the difference to work with. No single case is at fault.',
  },
  {
    folder: 'healthy-month',
    simulator: 'one',
    request: {
      seed: 1107,
      site: 'Kestrel Yard Market',
      timeZone: 'America/Phoenix',
      startDate: '2026-07-01',
      mediumCircuits: 8,
      lowCircuits: 3,
      lookAlikes: [
        'set-point-change',
        'heavy-stocking',
        'humid-week',
        'old-offset',
        'night-set-back',
        'weekend-trade',
        'long-gap',
        'not-connected',
      ],
    },
    dialect: every(
      { ...plainDialect, time: 'us-ampm', logging: { ...plainDialect.logging, temperatureStep: 0.5 } },
      5,
    ),
    compressed: true,
    title: 'A healthy month that looks like trouble',
    planted:
      'Nothing is wrong. A set point was changed on purpose, one line-up is stocked heavily, a humid week is felt by every case, one probe has always read off its neighbours, one line-up is set back by night and one sells more at weekends, the logger was down for a while, and a spare channel reads the same number for ever.',
  },
  {
    folder: 'left-off-after-service',
    simulator: 'one',
    request: {
      seed: 1108,
      days: 14,
      site: 'Tarnbeck Corner Store',
      timeZone: 'Europe/London',
      startDate: '2026-02-02',
      mediumCircuits: 4,
      lowCircuits: 0,
      lookAlikes: ['service-visit'],
      lookAlikeDay: 8.4,
      faults: [{ fault: 'left-off', on: 'M03', onsetDay: 8.4 }],
    },
    dialect: {
      ...changesDialect,
      time: 'day-first',
      delimiter: ';',
      without: [...longDialect.without, 'outdoor', 'discharge', 'liquid-level'],
    },
    compressed: true,
    title: 'A circuit left off after a service visit',
    planted:
      'On the ninth day somebody repairs the rack: suction is pulled down with the machines forced on and every circuit shut. Afterwards everything comes back but line-up M03, which stays off. The visit itself is no fault. The export holds a row for each change only.',
  },
];
