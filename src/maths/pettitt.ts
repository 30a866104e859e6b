import { midranks } from './ties.ts';

/**
 * Change of the median without assumptions on the distribution: Pettitt, Applied Statistics 28 (1979) 126. `at` is the
 * number of values before the change (so the index of the first after it); `p` is the usual approximation
 * 2·exp(−6K² ÷ (n³ + n²)), good below 0.5. Values must be finite and independent.
 */
export function pettitt(values: ArrayLike<number>): {
  readonly at: number;
  readonly statistic: number;
  readonly p: number;
} {
  const n = values.length;
  const ranks = midranks(values);
  let sum = 0;
  let statistic = 0;
  let at = 0;
  for (let k = 1; k < n; k++) {
    sum += ranks[k - 1]!;
    const u = Math.abs(2 * sum - k * (n + 1));
    if (u > statistic) {
      statistic = u;
      at = k;
    }
  }
  return { at, statistic, p: Math.min(1, 2 * Math.exp((-6 * statistic ** 2) / (n ** 3 + n ** 2))) };
}
