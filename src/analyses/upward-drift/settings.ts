import type { Setting } from '../analysis.ts';

const measured = 'measured by npm run evaluate';
const practice = 'common practice, no source';

export const settings = {
  minimumRise: {
    value: 0.83,
    unit: 'K',
    meaning: 'smallest rise over the history that is reported, after the common mode is taken out',
    source: 'common practice, no source (1.5 °F: the step by which a person would take notice)',
  },
  minimumSlope: {
    value: 0.028,
    unit: 'K/d',
    meaning: 'smallest rise a day that is reported (0.05 °F a day)',
    source: practice,
  },
  stillUp: {
    value: 0.55,
    unit: 'K',
    meaning: 'how far the last three days must stand above the level before the rise',
    source: practice,
  },
  tradingRise: {
    value: 1.1,
    unit: 'K',
    meaning:
      'smallest rise in trading hours over the night, against the other circuits, that is reported (2 °F)',
    source: practice,
  },
  nightShare: {
    value: 0.4,
    unit: '1',
    meaning: 'share of the rise in trading hours under which the night must have stayed',
    source: practice,
  },
  significance: {
    value: 0.01,
    unit: '1',
    meaning: 'one-sided Mann–Kendall probability below which days are held to rise',
    source: 'Mann 1945, Econometrica 13:245',
  },
  kneeScales: {
    value: 5,
    unit: '1',
    meaning: 'a rise too young for the trend test must be this many robust scales of the daily scatter',
    source: measured,
  },
  explainedShare: {
    value: 0.6,
    unit: '1',
    meaning: 'share of the squared variation that a young rise must explain',
    source: measured,
  },
  stepDays: {
    value: 2,
    unit: 'd',
    meaning: 'a rise with fewer known days than this between its two levels is a step, not a drift',
    source: measured,
  },
  sharedProbes: {
    value: 0.66,
    unit: '1',
    meaning: 'share of the probes that must have risen before the circuit as a whole is said to be warm',
    source: practice,
  },
  dutyRise: {
    value: 0.15,
    unit: '1',
    meaning:
      'rise of the share of time the valve feeds, against the other circuits, that is an early witness',
    source: measured,
  },
  dutyFull: {
    value: 0.92,
    unit: '1',
    meaning: 'share of time the valve feeds above which a circuit has no reserve left',
    source: 'common practice, no source (above 0.95 for hours: no reserve)',
  },
  refitDays: {
    value: 5,
    unit: 'd',
    meaning: 'days after the onset before a date for the limit is given',
    source: practice,
  },
  projectionReach: {
    value: 2,
    unit: '1',
    meaning: 'longest projection, in lengths of the history',
    source: practice,
  },
  heldShare: {
    value: 0.4,
    unit: '1',
    meaning:
      'share of its rise over its neighbours that the air itself must have made before a date is given',
    source: measured,
  },
  paceGain: {
    value: 0.12,
    unit: '1/d',
    meaning: 'share by which the rate of a creep grows a day, on the whole',
    source: measured,
  },
  paceWander: {
    value: 0.42,
    unit: '1/√d',
    meaning: 'share by which the rate of a creep wanders in a day, more with the root of the days',
    source: measured,
  },
  lateEndShare: {
    value: 0.5,
    unit: '1',
    meaning:
      'share of its way to the limit that a rise must have made before a last day is given: until then it may well stop short',
    source: measured,
  },
  paceDays: {
    value: 10,
    unit: 'd',
    meaning:
      'days ahead over which the rate of a creep is held to gather and to wander; nothing gathers for ever',
    source: practice,
  },
} as const satisfies { readonly [name: string]: Setting };
