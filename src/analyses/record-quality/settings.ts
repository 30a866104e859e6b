import type { Setting } from '../analysis.ts';

const practice = 'common practice, no source';

export const settings = {
  gapMinutes: {
    value: 60,
    unit: 'min',
    meaning: 'shortest time without any reading of any point that is reported as a gap',
    source:
      'gap test, QARTOD Manual for Real-Time Quality Control of In-situ Temperature and Salinity Data 2.0 (2016)',
  },
  leastCoverage: {
    value: 0.8,
    unit: '1',
    meaning: 'share of the samples (gaps of the whole export left out) below which a record is thin',
    source: practice,
  },
  motionlessDays: {
    value: 1,
    unit: 'd',
    meaning: 'shortest record without any change that is called not connected',
    source: practice,
  },
  twinShare: {
    value: 0.999,
    unit: '1',
    meaning: 'share of equal samples above which two moving columns are the same channel twice',
    source: practice,
  },
  unitTolerance: {
    value: 1.5,
    unit: 'K',
    meaning: 'how exactly a step must match degrees Fahrenheit read as Celsius, or the other way round',
    source: practice,
  },
} as const satisfies { readonly [name: string]: Setting };
