import { finiteValues, keepFinite } from './finite-values.ts';
import { selectQuantile } from './select-rank.ts';

/** The analyses ask for medians of an hour or of a month of days by the hundred thousand: those need no allocation. */
const scratch = new Float64Array(1024);
/** So few are put in order faster than selected from. */
const mostSorted = 12;

/**
 * Quantile by linear interpolation of the order statistics: type 7 of Hyndman and Fan, The American
 * Statistician 50 (1996) 361, the default of R and NumPy. Values that are not finite are left out; NaN when
 * none remains or `probability` is not within 0 to 1.
 */
export function quantile(values: ArrayLike<number>, probability: number): number {
  if (values.length > scratch.length) return selectQuantile(finiteValues(values), probability);
  const count = keepFinite(values, scratch);
  return count <= mostSorted
    ? sortedQuantile(probability, count)
    : selectQuantile(scratch, probability, count);
}

/** Several quantiles of the same values, in the order of `probabilities`. */
export function quantiles(values: ArrayLike<number>, probabilities: readonly number[]): number[] {
  const kept = finiteValues(values);
  return probabilities.map((probability) => selectQuantile(kept, probability));
}

function sortedQuantile(probability: number, count: number): number {
  const place = (count - 1) * probability;
  if (count === 0 || !(place >= 0 && probability <= 1)) return Number.NaN;
  for (let i = 1; i < count; i++) {
    const value = scratch[i]!;
    let at = i;
    for (; at > 0 && scratch[at - 1]! > value; at--) scratch[at] = scratch[at - 1]!;
    scratch[at] = value;
  }
  const below = Math.floor(place);
  const low = scratch[below]!;
  return place === below ? low : low + (place - below) * (scratch[below + 1]! - low);
}
