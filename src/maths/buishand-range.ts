import { mean } from './mean.ts';

/**
 * Range of the rescaled partial sums, most sensitive in the middle of a series (Buishand, Journal of Hydrology 58
 * (1982) 11). `statistic` is R ÷ √n with the standard deviation by n − 1 as in R's trend (Buishand divides by n),
 * whose 5 % limit is 1.50 for 30 values and 1.62 for 100 (his table I, from memory);
 * `at` the number of values up to the largest partial sum. Values must be finite.
 */
export function buishandRange(values: ArrayLike<number>): {
  readonly at: number;
  readonly statistic: number;
} {
  const n = values.length;
  const centre = mean(values);
  let sum = 0;
  let squares = 0;
  let highest = 0;
  let lowest = 0;
  let at = 0;
  let furthest = 0;
  for (let k = 1; k <= n; k++) {
    const deviation = values[k - 1]! - centre;
    sum += deviation;
    squares += deviation * deviation;
    highest = Math.max(highest, sum);
    lowest = Math.min(lowest, sum);
    if (k < n && Math.abs(sum) > furthest) {
      furthest = Math.abs(sum);
      at = k;
    }
  }
  return { at, statistic: squares === 0 ? 0 : (highest - lowest) / Math.sqrt((squares * n) / (n - 1)) };
}
