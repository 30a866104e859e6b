import { lagOneAutocorrelation } from '../../maths/autocorrelation.ts';
import { autocorrelationVarianceFactor } from '../../maths/autocorrelation-variance-factor.ts';
import { fitRamp, isClear, type Ramp, spanOf } from '../../maths/fit-ramp.ts';
import { mannKendall } from '../../maths/mann-kendall.ts';
import { median } from '../../maths/median.ts';
import { theilSenSlope } from '../../maths/theil-sen-slope.ts';
import { settings } from './settings.ts';

/** A daily series that went up and is still up. Positions are days. */
export interface Rise {
  readonly ramp: Ramp;
  /** Level after minus level before, K. */
  readonly size: number;
  /** Mann–Kendall over the whole series, one-sided: plain, and corrected for serial correlation. */
  readonly plainProbability: number;
  readonly correctedProbability: number;
  /** Slope after the onset with its 90 % interval by ranks, K a day; NaN with fewer than three days. */
  readonly slope: number;
  readonly slopeLow: number;
  readonly slopeHigh: number;
  readonly shape: 'creep' | 'step';
  /** True when it no longer rises: its ramp ended days ago. */
  readonly levelled: boolean;
}

const clarity = {
  leastSize: settings.minimumRise.value,
  leastScales: settings.kneeScales.value,
  leastScale: 0.08,
  leastExplained: settings.explainedShare.value,
};
const levelledDays = 3;

/**
 * Two ways to be a rise: the whole series trends (Mann–Kendall, the slope and the rise above their settings), or
 * it is flat and then leaves (a two-knee ramp that explains it, many scales high): the trend test is blind to
 * a rise of the last few days.
 */
export function findRise(days: Float64Array): Rise | null {
  if (spanOf(days) < settings.minimumRise.value) return null;
  const positions = days.map((_, day) => day);
  const ramp = fitRamp(positions, days);
  if (ramp === null) return null;
  const size = ramp.after - ramp.before;
  if (size < settings.minimumRise.value * shortHistoryFactor(days, ramp.start)) return null;
  if (!(lastDays(days) - ramp.before >= settings.stillUp.value)) return null;

  const trend = trendOf(positions, days);
  const trending =
    trend.plain < settings.significance.value &&
    trend.slope >= settings.minimumSlope.value &&
    trend.slope * (days.length - 1) >= settings.minimumRise.value;
  if (!(trending || isClear(ramp, clarity))) return null;

  const after = slopeAfter(days, ramp);
  return {
    ramp,
    size,
    plainProbability: trend.plain,
    correctedProbability: trend.corrected,
    ...after,
    shape: daysBetween(days, ramp) < settings.stepDays.value ? 'step' : 'creep',
    levelled: days.length - 1 - ramp.end >= levelledDays,
  };
}

/** Known days strictly between the two levels: days of a gap may hide a step as well as a creep. */
function daysBetween(days: Float64Array, ramp: Ramp): number {
  return days.subarray(ramp.start + 1, ramp.end).filter(Number.isFinite).length;
}

/** With fewer than so many days before it, a rise must be larger by so much for every day that lacks. */
const wantedDaysBefore = 5;
const perLackingDay = 0.25;

function shortHistoryFactor(days: Float64Array, start: number): number {
  const before = days.subarray(0, start + 1).filter(Number.isFinite).length;
  return 1 + perLackingDay * Math.max(0, wantedDaysBefore - before);
}

function lastDays(days: Float64Array): number {
  return median(days.filter(Number.isFinite).slice(-3));
}

function trendOf(positions: Float64Array, days: Float64Array) {
  const { slope, intercept } = theilSenSlope(positions, days);
  const left = days.map((value, day) => value - intercept - slope * day);
  const known = days.filter(Number.isFinite).length;
  const factor = autocorrelationVarianceFactor(known, lagOneAutocorrelation(left));
  return {
    slope,
    plain: mannKendall(days).increasing,
    corrected: mannKendall(days, factor).increasing,
  };
}

/** Slope from the onset to the end of the ramp (or of the series while it still rises). */
function slopeAfter(days: Float64Array, ramp: Ramp): { slope: number; slopeLow: number; slopeHigh: number } {
  const to = days.length - 1 - ramp.end >= levelledDays ? ramp.end + 1 : days.length;
  const part = days.subarray(ramp.start, to);
  const positions = part.map((_, day) => day);
  const first = theilSenSlope(positions, part);
  const left = part.map((value, day) => value - first.intercept - first.slope * day);
  const factor = autocorrelationVarianceFactor(first.n, lagOneAutocorrelation(left));
  const { slope, low, high } = theilSenSlope(positions, part, { confidence: 0.9, varianceFactor: factor });
  return { slope, slopeLow: low, slopeHigh: high };
}
