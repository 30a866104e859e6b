import { mean } from './mean.ts';

/**
 * Autocorrelation at a lag: Σ (y[i] − ȳ)(y[i + lag] − ȳ) ÷ Σ (y[i] − ȳ)², the definition of the NIST Handbook
 * 1.3.5.12 and of R's `acf`. Missing values keep their place: a product with one is left out of the upper sum,
 * so a gap lowers the result toward 0 and never joins two values that were not neighbours. NaN for constant or
 * empty series.
 */
export function autocorrelation(values: ArrayLike<number>, lag: number): number {
  const centre = mean(values);
  let products = 0;
  let squares = 0;
  for (let i = 0; i < values.length; i++) {
    const deviation = values[i]! - centre;
    if (!Number.isFinite(deviation)) continue;
    squares += deviation * deviation;
    const later = (values[i + lag] ?? Number.NaN) - centre;
    if (Number.isFinite(later)) products += deviation * later;
  }
  return squares === 0 ? Number.NaN : products / squares;
}

export function lagOneAutocorrelation(values: ArrayLike<number>): number {
  return autocorrelation(values, 1);
}
