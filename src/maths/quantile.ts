import { finiteValues } from './finite-values.ts';
import { selectQuantile } from './select-rank.ts';
import { mostSorted, quantileOfFew } from './sorted-few.ts';

/**
 * Quantile by linear interpolation of the order statistics: type 7 of Hyndman and Fan, The American
 * Statistician 50 (1996) 361, the default of R and NumPy. Values that are not finite are left out; NaN when
 * none remains or `probability` is not within 0 to 1.
 */
export function quantile(values: ArrayLike<number>, probability: number): number {
  return values.length <= mostSorted
    ? quantileOfFew(values, probability)
    : selectQuantile(finiteValues(values), probability);
}

/** Several quantiles of the same values, in the order of `probabilities`. */
export function quantiles(values: ArrayLike<number>, probabilities: readonly number[]): number[] {
  const kept = finiteValues(values);
  return probabilities.map((probability) => selectQuantile(kept, probability));
}
