import { quantile } from './quantile.ts';

/** The middle value, or the mean of the middle two. Values that are not finite are left out; NaN when none remains. */
export function median(values: ArrayLike<number>): number {
  return quantile(values, 0.5);
}
