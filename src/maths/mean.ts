import { mean as meanOf } from 'simple-statistics';
import { finiteValues } from './finite-values.ts';

/** Arithmetic mean by compensated summation. Values that are not finite are left out; NaN when none remains. */
export function mean(values: ArrayLike<number>): number {
  const kept = finiteValues(values);
  // Read by index alone, so that a typed array does as well.
  return kept.length === 0 ? Number.NaN : meanOf(kept as ArrayLike<number> as number[]);
}
