import type { Setting } from '../analysis.ts';

const practice = 'common practice, no source';

export const settings = {
  offMinutes: {
    value: 180,
    unit: 'min',
    meaning: 'how long a circuit must be shut off, by behaviour, before it is said to have been left so',
    source: practice,
  },
  forcedMinutes: {
    value: 360,
    unit: 'min',
    meaning: 'how long a valve must feed without a pause, the air under its set point, to be an override',
    source: practice,
  },
  forcedUnder: {
    value: 1.1,
    unit: 'K',
    meaning: 'how far under the cut-out the air must be all that time (2 °F)',
    source: practice,
  },
  visitMinutes: {
    value: 30,
    unit: 'min',
    meaning: 'shortest stop that counts as a visit when set-point changes near it are judged',
    source: practice,
  },
  visitReach: {
    value: 12,
    unit: 'h',
    meaning: 'how near to a visit a set-point change belongs to it',
    source: practice,
  },
  restoredWithin: {
    value: 0.3,
    unit: 'K',
    meaning: 'how near its old value a set point must come to count as restored',
    source: practice,
  },
  sharedShare: {
    value: 0.5,
    unit: '1',
    meaning: 'share of the group’s circuits off at one time that makes it a stop of the rack or of the power',
    source: practice,
  },
} as const satisfies { readonly [name: string]: Setting };
