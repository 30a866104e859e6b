import { finiteValues } from './finite-values.ts';
import { selectQuantile } from './select-rank.ts';

/** 1 ÷ Φ⁻¹(3/4): by it the median absolute deviation of normal data becomes their standard deviation. */
export const normalConsistency = 1.482602218505602;

/**
 * Median distance from the median, not scaled (R: `mad(x, constant = 1)`). Values that are not finite are left
 * out; NaN when none remains.
 */
export function medianAbsoluteDeviation(values: ArrayLike<number>): number {
  const kept = finiteValues(values);
  const centre = selectQuantile(kept, 0.5);
  for (let i = 0; i < kept.length; i++) kept[i] = Math.abs(kept[i]! - centre);
  return selectQuantile(kept, 0.5);
}
