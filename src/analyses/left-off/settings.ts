import type { Setting } from '../analysis.ts';

const practice = 'common practice, no source';

export const settings = {
  offMinutes: {
    value: 180,
    unit: 'min',
    meaning: 'how long a circuit must be shut off, by behaviour, before it is said to have been left so',
    source: practice,
  },
  endedHours: {
    value: 12,
    unit: 'h',
    meaning: 'how long a stop or an override that is over must have lasted to be remarked on',
    source: practice,
  },
  forcedHours: {
    value: 6,
    unit: 'h',
    meaning: 'how long a valve must feed without a pause to be looked at as an override',
    source: practice,
  },
  forcedOpening: {
    value: 0.95,
    unit: '1',
    meaning: 'mean opening of an hour from which the valve was open all the time',
    source: practice,
  },
  forcedUnder: {
    value: 0.15,
    unit: 'K',
    meaning: 'how far under the level at which the control shuts it the air must be',
    source: practice,
  },
  forcedShare: {
    value: 0.5,
    unit: '1',
    meaning: 'share of those hours in which the air must be under it',
    source: practice,
  },
  coldHours: {
    value: 36,
    unit: 'h',
    meaning:
      'or how long it must stand open while the air stays that far, and half a dead band, under its usual level',
    source: practice,
  },
  overcooled: {
    value: 1.7,
    unit: 'K',
    meaning: 'how far under a logged set point all probes must stand, whatever the valve shows (3 °F)',
    source: practice,
  },
  stillCycle: {
    value: 0.4,
    unit: '1',
    meaning: 'share of its daily cycle that air under an override may keep, where no valve is logged',
    source: practice,
  },
  usualWithin: {
    value: 0.3,
    unit: 'K',
    meaning: 'how far a probe may stand above its own earlier level before it may be what drives the valve',
    source: practice,
  },
  visitMinutes: {
    value: 30,
    unit: 'min',
    meaning: 'shortest stop that counts as a visit when set-point changes near it are judged',
    source: practice,
  },
  visitRise: {
    value: 4,
    unit: 'K',
    meaning: 'and, where no valve is logged, how far above its set point the air must stand for as long',
    source: practice,
  },
  visitReach: {
    value: 3,
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
  changedLeast: {
    value: 1.1,
    unit: 'K',
    meaning: 'how far a set point must have gone with no visit near to be remarked on (2 °F)',
    source: practice,
  },
  changedHours: {
    value: 48,
    unit: 'h',
    meaning: 'how long it must then have stood there at the end of the log, and before at its old value',
    source: practice,
  },
  sharedShare: {
    value: 0.5,
    unit: '1',
    meaning: 'share of the group’s circuits off at one time that makes it a stop of the rack or of the power',
    source: practice,
  },
} as const satisfies { readonly [name: string]: Setting };
