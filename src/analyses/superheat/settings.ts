import type { Setting } from '../analysis.ts';

const practice = 'common practice, no source';

export const settings = {
  feedingMinutes: {
    value: 5,
    unit: 'min',
    meaning: 'how long the valve must have fed before superheat means anything',
    source: practice,
  },
  nearSetPoint: {
    value: 2.8,
    unit: 'K',
    meaning: 'how near its set point the air must be for superheat to be judged (5 °F)',
    source: practice,
  },
  singleOpenings: {
    value: 0.5,
    unit: '1',
    meaning:
      'share of the openings of a valve seen in one reading only from which superheat that has settled says little of it',
    source: practice,
  },
  fewestMinutes: {
    value: 20,
    unit: 'min',
    meaning: 'settled feeding in a day before the day counts',
    source: practice,
  },
  openFrom: {
    value: 0.5,
    unit: '1',
    meaning:
      'opening of a valve that regulates from which its coil is asked to fill: below, superheat is high because the control throttles it',
    source: practice,
  },
  starving: {
    value: 8.3,
    unit: 'K',
    meaning: 'daily median superheat above which, once it has risen, the coil is starved (15 °F)',
    source: `${practice} (settled 6 to 8 °F is good, 5 to 12 °F usual)`,
  },
  starvingRise: {
    value: 3.3,
    unit: 'K',
    meaning: 'rise over its own earlier days that counts as one (6 °F)',
    source: practice,
  },
  starvingAlways: {
    value: 12.2,
    unit: 'K',
    meaning: 'daily median superheat that is too high whatever it used to be (22 °F)',
    source: practice,
  },
  aboutLimit: {
    value: 1.1,
    unit: 'K',
    meaning:
      'nearer to that limit than this it always stood about it, and a rise by more is dated by itself (2 °F)',
    source: practice,
  },
  flooding: {
    value: 1.7,
    unit: 'K',
    meaning: 'daily median superheat under which liquid leaves the coil (3 °F)',
    source: practice,
  },
  hunting: {
    value: 2.2,
    unit: 'K',
    meaning:
      'median second difference of superheat from one reading to the next, while feeding, of a valve that hunts',
    source: `${practice} (±6 °F at 1 to 5 min: a sine of 3.3 K and 5 min read every minute has 3.2 K)`,
  },
  huntingInterval: {
    value: 2,
    unit: 'min',
    meaning: 'coarsest logging at which hunting can be seen',
    source: 'half the shortest period, after Shannon 1949, Proc. IRE 37:10',
  },
  daysInAWeek: {
    value: 3,
    unit: 'd',
    meaning: 'judged days, of the last seven of them, that must agree',
    source: practice,
  },
} as const satisfies { readonly [name: string]: Setting };
