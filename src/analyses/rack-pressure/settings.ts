import { pressurePerKelvin } from '../../refrigerants/pressure-per-kelvin.ts';
import type { Setting } from '../analysis.ts';

const practice = 'common practice, no source';
const perKelvin =
  'near −10 °C 1 K of saturated suction is 3.2 to 3.9 % of the absolute pressure for the refrigerants in the tables here (CoolProp)';

export const settings = {
  high: {
    value: 1.7,
    unit: 'K',
    meaning:
      'how far an hour’s saturated suction temperature stands above that of its target or norm to be high (3 °F)',
    source: practice,
  },
  highScales: {
    value: 3,
    unit: '1',
    meaning:
      'and how many robust scales of what its own hours scatter: a group of few machines swings with their differential',
    source: practice,
  },
  unfeltHours: {
    value: 0.5,
    unit: '1',
    meaning:
      'share of the hours of its last three days that must be high where no circuit is warm with it and no machine is short: afternoons alone warm nothing',
    source: practice,
  },
  want: {
    value: 0.6,
    unit: '1',
    meaning:
      'how much more of its cooling the middle circuit of a group must ask for to be short: the mean of its valve, its recovery and its air, each in the units of the three settings that say what is plain',
    source: 'measured by npm run evaluate -- --only low-charge, and healthy',
  },
  wantDuty: {
    value: 0.15,
    unit: '1',
    meaning: 'rise of the share of time that a valve feeds that is plain',
    source: practice,
  },
  wantRecovery: {
    value: 1.5,
    unit: '1',
    meaning: 'times its usual minutes from which a recovery is plainly longer',
    source: practice,
  },
  busier: {
    value: 0.1,
    unit: '1',
    meaning:
      'growth of the share of the machines that run above which it is the load that grew, and not the liquid that lacks',
    source: 'measured by npm run evaluate -- --only healthy and low-charge',
  },
  frostedRate: {
    value: 0.6,
    unit: '1',
    meaning:
      'fastest rise of the air in defrost, of the middle circuit, against that before under which the coils carry frost and do not lack liquid',
    source:
      'between the 0.82 (0.65 to 0.91) of starved and the 0.47 (0.18 to 0.57) of frosted coils of the section model',
  },
  crept: {
    value: 1.2,
    unit: 'K',
    meaning: 'how far the days must have risen for a creeping rise to be reported (some 2 °F)',
    source: practice,
  },
  low: {
    value: 2.8,
    unit: 'K',
    meaning: 'how far the hours must stand below target and norm to be low (5 °F)',
    source: practice,
  },
  pressurePerKelvin: {
    value: pressurePerKelvin,
    unit: '/K',
    meaning: 'share of the absolute pressure that stands for 1 K where the refrigerant is not known',
    source: perKelvin,
  },
  highHours: {
    value: 3,
    unit: 'h',
    meaning: 'high hours that make a day count',
    source: practice,
  },
  highDays: {
    value: 2,
    unit: 'd',
    meaning: 'days that must count within seven',
    source: practice,
  },
  cusumAllowance: {
    value: 1,
    unit: '1',
    meaning: 'allowance of the cumulative sum of the days, in robust deviations',
    source: 'Page 1954, Biometrika 41:100; NIST Handbook 6.3.2.3; its false-alarm rate by Monte Carlo',
  },
  cusumLimit: {
    value: 8,
    unit: '1',
    meaning: 'limit of the cumulative sum',
    source: 'as the allowance',
  },
  warmRise: {
    value: 0.83,
    unit: 'K',
    meaning: 'rise of a circuit’s air that counts it as warm with its group (1.5 °F)',
    source: practice,
  },
  warmShare: {
    value: 0.6,
    unit: '1',
    meaning: 'share of the circuits that must be warm together for one cause behind them all',
    source: practice,
  },
  allRunning: {
    value: 0.85,
    unit: '1',
    meaning: 'share of the high time with every usable compressor running that shows a lack of capacity',
    source: practice,
  },
  tripDepth: {
    value: 0.72,
    unit: '1',
    meaning: 'share of the target (absolute) under which a short dip is a low-pressure trip',
    source: practice,
  },
  cutOutDepth: {
    value: 0.9,
    unit: '1',
    meaning:
      'share of the target (absolute) under which machines that all stop between two readings were cut out by low pressure',
    source: practice,
  },
  tripsADay: {
    value: 4,
    unit: '/d',
    meaning: 'such dips or stops a day from which they are reported',
    source: practice,
  },
  visitDepth: {
    value: 0.6,
    unit: '1',
    meaning: 'share of the target under which a group was pumped down by a person',
    source: `${practice} (50 psig pulled down to about 10 for a repair)`,
  },
  visitMinutes: {
    value: 20,
    unit: 'min',
    meaning: 'how long it must stay pumped down',
    source: practice,
  },
  visitHours: {
    value: 24,
    unit: 'h',
    meaning: 'how long at most: a group that stands or falls so low for longer has lost its control',
    source: practice,
  },
  visitsAMonth: {
    value: 4,
    unit: '/mo',
    meaning: 'pump-downs in 30 days above which they are the habit of a control and no visits',
    source: practice,
  },
  condensingRise: {
    value: 4.4,
    unit: 'K',
    meaning: 'condensing above its own norm at the same outdoor temperature (8 °F)',
    source: practice,
  },
  condensingCrept: {
    value: 2.8,
    unit: 'K',
    meaning: 'how far days of condensing must have crept above their norm for their weather and load (5 °F)',
    source: practice,
  },
  condensingDifference: {
    value: 11,
    unit: 'K',
    meaning: 'condensing above outdoor where the history is too cool to teach it (20 °F)',
    source: practice,
  },
  targetLeft: {
    value: 1.2,
    unit: 'K',
    meaning:
      'how far the target must stand from where it stood before to have been changed, or left so by a visit (some 2 °F)',
    source: practice,
  },
  targetHours: {
    value: 48,
    unit: 'h',
    meaning: 'how long a target must have stood at its old value and at its new one to have been changed',
    source: practice,
  },
  condensingSlope: {
    value: 3.1,
    unit: '%/K',
    meaning: 'rise of the pressure with the condensing temperature, taken where the refrigerant is not known',
    source: 'the steepest of the saturation tables here from 20 to 45 °C; they run from 2.2 to 3.1',
  },
  levelShare: {
    value: 0.4,
    unit: '1',
    meaning: 'share of its own usual level under which the receiver is low for this rack',
    source: `${practice} (there is no norm for all racks)`,
  },
  floatDays: {
    value: 5,
    unit: 'd',
    meaning: 'days for which a target that used to float stands still before it is reported',
    source: practice,
  },
} as const satisfies { readonly [name: string]: Setting };
