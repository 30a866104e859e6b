import { quantiles } from './quantile.ts';

/** Upper minus lower quartile (type 7). Values that are not finite are left out; NaN when none remains. */
export function interquartileRange(values: ArrayLike<number>): number {
  const [lower, upper] = quantiles(values, [0.25, 0.75]);
  return upper! - lower!;
}
