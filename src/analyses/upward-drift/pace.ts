import { type LocalTrend, localTrend } from '../../maths/local-trend.ts';
import { median } from '../../maths/median.ts';
import { medianAbsoluteDeviation, normalConsistency } from '../../maths/median-absolute-deviation.ts';
import { theilSenSlope } from '../../maths/theil-sen-slope.ts';
import type { Celsius, Kelvin, KelvinPerDay } from '../../units/quantities.ts';
import { settings } from './settings.ts';

/** Where a creep stands on its last day and how fast it goes now. */
export interface Pace extends LocalTrend {
  /** Theil–Sen slope of all days since the onset; NaN with fewer than two. */
  readonly overall: KelvinPerDay;
  /** Level before the onset. */
  readonly usual: Celsius;
  /** Scatter of a day about the level. */
  readonly scatter: Kelvin;
}

/** Least scatter of a daily median: what a fridge does even where the log is too coarse to show it, K. */
const leastScatter = 0.1;
/** The level before the onset is known no better than so many days make it. */
const mostDaysBefore = 7;

/**
 * Follows the daily level from the onset on. The rate of a creep is no constant: ice feeds on itself, and air that lost its
 * control's reserve goes faster than before; so it wanders, by `paceWander` of its mean, and gathers by `paceGain` a day.
 */
export function paceOf(days: Float64Array, onsetDay: number): Pace {
  const before = days.subarray(0, onsetDay + 1).filter(Number.isFinite);
  const since = days.subarray(onsetDay);
  const usual = median(before);
  const overall = theilSenSlope(
    since.map((_, day) => day),
    since,
  ).slope;
  const rate = Number.isFinite(overall) ? overall : 0;
  const scatter = Math.max(
    leastScatter,
    before.length === 0 ? 0 : normalConsistency * medianAbsoluteDeviation(before),
    scatterOfBends(since),
  );
  const noise = scatter * scatter;
  const trend = localTrend(since, {
    start: {
      level: Number.isFinite(usual) ? usual : median(since),
      slope: rate,
      levelVariance: noise / Math.min(mostDaysBefore, Math.max(1, before.length)),
      covariance: 0,
      slopeVariance: rate * rate,
    },
    noise,
    slopeWander: (settings.paceWander.value * rate) ** 2,
  });
  return { ...trend, overall, usual, scatter };
}

/** Scatter from each day against the mean of its two neighbours (variance 1.5 of a day's own), to which a steady slope is blind. */
function scatterOfBends(days: Float64Array): Kelvin {
  const bends = days
    .map((value, day) => Math.abs(value - (days[day - 1]! + days[day + 1]!) / 2))
    .filter(Number.isFinite);
  return bends.length < 3 ? 0 : (normalConsistency * median(bends)) / Math.sqrt(1.5);
}
