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
  fewestMinutes: {
    value: 20,
    unit: 'min',
    meaning: 'settled feeding in a day before the day counts',
    source: practice,
  },
  starving: {
    value: 8.3,
    unit: 'K',
    meaning: 'daily median superheat from which the coil is starved (15 °F)',
    source: `${practice} (settled 6 to 8 °F is good, 5 to 12 °F usual)`,
  },
  starvingRise: {
    value: 3.3,
    unit: 'K',
    meaning: 'rise over its own earlier days from which the coil is starved (6 °F)',
    source: practice,
  },
  flooding: {
    value: 1.7,
    unit: 'K',
    meaning: 'daily median superheat under which liquid leaves the coil (3 °F)',
    source: practice,
  },
  hunting: {
    value: 6.7,
    unit: 'K',
    meaning: 'swing (p10 to p90) of superheat within settled feeding from which the valve hunts (±6 °F)',
    source: practice,
  },
  daysInAWeek: {
    value: 3,
    unit: 'd',
    meaning: 'judged days, of the last seven of them, that must agree',
    source: practice,
  },
} as const satisfies { readonly [name: string]: Setting };
