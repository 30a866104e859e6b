/**
 * By how much serial correlation that dies away as r^k inflates the variance of Kendall's S:
 * 1 + 2 Σ (1 − k/n) r^k. The lag-one autocorrelation of n values is biased low, so r is first raised to
 * (n·r₁ + 2) ÷ (n − 4) and held within 0 to 0.9 (van Giersbergen, Economics Letters 89 (2005) 75, from memory). 1 for
 * fewer than five values or an unknown correlation.
 */
export function autocorrelationVarianceFactor(n: number, lagOne: number): number {
  if (!(n >= 5) || !Number.isFinite(lagOne)) return 1;
  const r = Math.min(0.9, Math.max(0, (n * lagOne + 2) / (n - 4)));
  let factor = 1;
  let power = 1;
  for (let k = 1; k < n; k++) {
    power *= r;
    factor += 2 * (1 - k / n) * power;
  }
  return factor;
}
