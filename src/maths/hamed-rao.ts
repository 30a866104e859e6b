import { autocorrelation } from './autocorrelation.ts';
import { finiteValues } from './finite-values.ts';
import { type MannKendall, mannKendall } from './mann-kendall.ts';
import { normalQuantile } from './normal-distribution.ts';
import { theilSenSlope } from './theil-sen-slope.ts';
import { midranks } from './ties.ts';

/**
 * Mann–Kendall test with the variance of Hamed and Rao, Journal of Hydrology 204 (1998) 182: the ranks of the
 * detrended values lend their significant autocorrelations (95 %) up to `lags`. Values equally spaced in time; those that
 * are not finite are left out. Negative correlations may shrink the variance, so it is the less careful choice
 * beside `autocorrelationVarianceFactor`.
 */
export function hamedRao(values: ArrayLike<number>, lags = Number.POSITIVE_INFINITY): MannKendall {
  const kept = finiteValues(values);
  return mannKendall(kept, hamedRaoFactor(kept, lags));
}

/** The factor alone; values must be finite. */
export function hamedRaoFactor(values: Float64Array, lags: number): number {
  const n = values.length;
  if (n < 4) return 1;
  const steps = Float64Array.from(values, (_, i) => i);
  const { slope } = theilSenSlope(steps, values);
  const ranks = midranks(values.map((value, i) => value - slope * (i + 1)));
  const significant = normalQuantile(0.975) / Math.sqrt(n);
  let sum = 0;
  for (let lag = 1; lag <= Math.min(lags, n - 1); lag++) {
    const correlation = autocorrelation(ranks, lag);
    if (Math.abs(correlation) > significant) sum += (n - lag) * (n - lag - 1) * (n - lag - 2) * correlation;
  }
  return 1 + (2 * sum) / (n * (n - 1) * (n - 2));
}
