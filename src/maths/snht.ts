import { mean } from './mean.ts';
import { sampleStandardDeviation } from './sample-standard-deviation.ts';

/**
 * Standard normal homogeneity test for one shift (Alexandersson, Journal of Climatology 6 (1986) 661), most
 * sensitive near the ends. `at` is the number of values before the shift; `statistic` is T₀, whose 5 % limit is 7.65
 * for 30 values and 9.15 for 100 (Alexandersson and Moberg 1997, from memory). Values must be finite.
 */
export function snht(values: ArrayLike<number>): { readonly at: number; readonly statistic: number } {
  const n = values.length;
  const centre = mean(values);
  const deviation = sampleStandardDeviation(values);
  let sum = 0;
  let statistic = 0;
  let at = 0;
  for (let k = 1; k < n; k++) {
    sum += (values[k - 1]! - centre) / deviation;
    // The standardised values sum to 0, so the rest sums to −sum.
    const t = (sum * sum) / k + (sum * sum) / (n - k);
    if (t > statistic) {
      statistic = t;
      at = k;
    }
  }
  return { at, statistic };
}
