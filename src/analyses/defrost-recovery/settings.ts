import type { Setting } from '../analysis.ts';

const practice = 'common practice, no source';

export const settings = {
  mediumLimit: {
    value: 60,
    unit: 'min',
    meaning: 'longest recovery of a medium-temperature case',
    source: `${practice} (10 to 45 min are usual after an off-cycle defrost)`,
  },
  lowLimit: {
    value: 120,
    unit: 'min',
    meaning: 'longest recovery of a low-temperature case',
    source: `${practice} (20 to 90 min are usual after an electric defrost)`,
  },
  slowRatio: {
    value: 1.5,
    unit: '1',
    meaning: 'times its own earlier median from which a recovery is slow',
    source: practice,
  },
  slowMinutes: {
    value: 10,
    unit: 'min',
    meaning: 'least lengthening that counts, whatever its ratio',
    source: practice,
  },
  lengtheningShare: {
    value: 0.3,
    unit: '1',
    meaning: 'least lengthening over the history, as a share, for a trend',
    source: practice,
  },
  trendMinutes: {
    value: 6,
    unit: 'min',
    meaning: 'least lengthening of a trend',
    source: 'measured by npm run evaluate',
  },
  trendScales: {
    value: 3,
    unit: '1',
    meaning: 'least lengthening of a trend, in robust scales of what the daily recoveries scatter about it',
    source: 'measured by npm run evaluate',
  },
  overheated: {
    value: 4,
    unit: 'K',
    meaning: 'rise of the coil at the end of defrost over its own earlier end that shows termination failed',
    source: practice,
  },
  significance: {
    value: 0.05,
    unit: '1',
    meaning:
      'one-sided Mann–Kendall probability, corrected for serial correlation, under which it is a trend',
    source: 'Mann 1945, Econometrica 13:245; variance factor as in Hamed 2008, Journal of Hydrology 349:350',
  },
  lastDefrosts: {
    value: 4,
    unit: '1',
    meaning: 'the last defrosts looked at for failed and slow recovery; two of them must agree',
    source: practice,
  },
  weakRise: {
    value: 0.5,
    unit: '1',
    meaning: 'share of its own earlier peak rise (or rise rate) under which a defrost hardly heats',
    source: practice,
  },
  noRise: {
    value: 0.2,
    unit: '1',
    meaning: 'share of the usual rise under which, with no status logged, no defrost came',
    source: practice,
  },
  weakerRise: {
    value: 0.68,
    unit: '1',
    meaning: 'the same, where it stands out by six scales of what the defrosts scatter',
    source: 'measured by npm run evaluate',
  },
  extendedRatio: {
    value: 1.3,
    unit: '1',
    meaning: 'times its own earlier length from which a defrost is extended',
    source: practice,
  },
  heatedOnRatio: {
    value: 1.1,
    unit: '1',
    meaning:
      'the same where the air peaks higher from that defrost on: the heat goes on where it used to end',
    source: 'measured by npm run evaluate',
  },
  heatedOnRise: {
    value: 0.8,
    unit: 'K',
    meaning: 'by how much higher it must peak then',
    source: 'measured by npm run evaluate',
  },
  heatedOnScales: {
    value: 2,
    unit: '1',
    meaning: 'and by how many robust scales of the events, length and peak both',
    source: 'measured by npm run evaluate',
  },
  earlyRatio: {
    value: 0.5,
    unit: '1',
    meaning: 'times its own earlier length under which a defrost ended early',
    source: practice,
  },
  timeEndedShare: {
    value: 0.8,
    unit: '1',
    meaning: 'share of defrosts ending at one and the same longest time that shows them ended by the clock',
    source: practice,
  },
  clockDefrosts: {
    value: 6,
    unit: '1',
    meaning: 'defrosts before and since that it takes to tell that they are now ended by the clock',
    source: practice,
  },
  clockBefore: {
    value: 0.3,
    unit: '1',
    meaning:
      'most of the earlier defrosts that may have run to the longest time: a coil that mostly does is no change',
    source: practice,
  },
  clockSteps: {
    value: 3,
    unit: '1',
    meaning: 'logging steps by which the earlier defrosts must usually have been shorter',
    source: practice,
  },
  clockChance: {
    value: 0.001,
    unit: '1',
    meaning:
      'chance that the last defrosts would be the longest ones if their order were chance, under which it is none',
    source: 'hypergeometric probability',
  },
  movedDays: {
    value: 2,
    unit: 'd',
    meaning:
      'days from either end of the history at which a time of day must begin or end for its defrosts to have moved',
    source: practice,
  },
  missedDefrosts: {
    value: 2,
    unit: '1',
    meaning: 'defrosts missed in the history before they are more than a remark',
    source: practice,
  },
} as const satisfies { readonly [name: string]: Setting };
