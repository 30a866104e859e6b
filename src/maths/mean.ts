import { mean as meanOf } from 'simple-statistics';
import { finiteValues } from './finite-values.ts';

/** Arithmetic mean by compensated summation. Values that are not finite are left out; NaN when none remains. */
export function mean(values: ArrayLike<number>): number {
  const kept = finiteValues(values);
  return kept.length === 0 ? Number.NaN : meanOf(Array.from(kept));
}
