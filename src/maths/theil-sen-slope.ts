import { finitePairs } from './finite-values.ts';
import { median } from './median.ts';
import { normalQuantile } from './normal-distribution.ts';
import { selectQuantile, selectRank } from './select-rank.ts';
import { kendallVariance, tieSizes } from './ties.ts';

export interface TheilSenOptions {
  /** Of the two-sided interval; 0.95 when not given. */
  readonly confidence?: number;
  /** Inflates the variance of Kendall's S for serial correlation; 1 when not given. */
  readonly varianceFactor?: number;
  /** The rank limits rounded (scipy, R's zyp), or the slopes interpolated between ranks (Gilbert 1987, 16.5). */
  readonly limits?: 'rounded' | 'interpolated';
}

export interface TheilSen {
  readonly slope: number;
  /** Limits of the slope's interval. */
  readonly low: number;
  readonly high: number;
  /** Median of y − slope · t: the line with as many values above as below. */
  readonly intercept: number;
  /** Line through the median time and the median value (Conover; scipy's default). */
  readonly interceptThroughMedians: number;
  readonly n: number;
}

/** Pairs are listed in memory: 2,000 points make two million slopes, 16 MB and a tenth of a second. */
export const theilSenMostPoints = 2000;

/**
 * Median of the slopes between all pairs of points: Theil (1950) and Sen, J. Am. Stat. Assoc. 63 (1968) 1379, with Sen's
 * interval by ranks. Points with a value or time that is not finite are left out, and so are pairs at one time.
 * Everything NaN where no pair is left. Throws a RangeError above `theilSenMostPoints`: summarise by day first.
 */
export function theilSenSlope(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
  options: TheilSenOptions = {},
): TheilSen {
  const { first: t, second: y } = finitePairs(times, values);
  if (t.length > theilSenMostPoints) {
    throw new RangeError(`Theil–Sen slope of ${t.length} points; at most ${theilSenMostPoints} are allowed.`);
  }
  const slopes = pairSlopes(t, y);
  const slope = selectQuantile(slopes, 0.5);
  const residuals = y.map((value, i) => value - slope * t[i]!);
  return {
    slope,
    ...slopeLimits(slopes, t, y, options),
    intercept: median(residuals),
    interceptThroughMedians: median(y) - slope * median(t),
    n: t.length,
  };
}

function pairSlopes(t: Float64Array, y: Float64Array): Float64Array {
  const slopes = new Float64Array((t.length * (t.length - 1)) / 2);
  let count = 0;
  for (let j = 1; j < t.length; j++) {
    for (let i = 0; i < j; i++) {
      const apart = t[j]! - t[i]!;
      if (apart !== 0) slopes[count++] = (y[j]! - y[i]!) / apart;
    }
  }
  return slopes.subarray(0, count);
}

function slopeLimits(
  slopes: Float64Array,
  t: Float64Array,
  y: Float64Array,
  { confidence = 0.95, varianceFactor = 1, limits = 'rounded' }: TheilSenOptions,
): { low: number; high: number } {
  const count = slopes.length;
  if (count === 0) return { low: Number.NaN, high: Number.NaN };
  const variance = kendallVariance(t.length, tieSizes(t), tieSizes(y)) * varianceFactor;
  const width = normalQuantile((1 + confidence) / 2) * Math.sqrt(Math.max(0, variance));
  const lowPlace = (count - width) / 2 - 1;
  const highPlace = (count + width) / 2;
  if (limits === 'interpolated') {
    return { low: between(slopes, lowPlace), high: between(slopes, highPlace) };
  }
  return {
    low: selectRank(slopes, held(Math.round(lowPlace + 1) - 1, count)),
    high: selectRank(slopes, held(Math.round(highPlace), count)),
  };
}

function held(place: number, count: number): number {
  return Math.min(count - 1, Math.max(0, place));
}

function between(slopes: Float64Array, place: number): number {
  return slopes.length === 1
    ? slopes[0]!
    : selectQuantile(slopes, held(place, slopes.length) / (slopes.length - 1));
}
