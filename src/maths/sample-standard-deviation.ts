import { finiteValues } from './finite-values.ts';
import { mean } from './mean.ts';

/**
 * Standard deviation with n − 1, by the corrected two-pass sum (Chan, Golub and LeVeque, The American
 * Statistician 37 (1983) 242), which keeps digits where simple-statistics' plain two-pass loses them.
 * Values that are not finite are left out; NaN when fewer than two remain.
 */
export function sampleStandardDeviation(values: ArrayLike<number>): number {
  const kept = finiteValues(values);
  if (kept.length < 2) return Number.NaN;
  const centre = mean(kept);
  let squares = 0;
  let remainder = 0;
  for (const value of kept) {
    const deviation = value - centre;
    squares += deviation * deviation;
    remainder += deviation;
  }
  return Math.sqrt((squares - (remainder * remainder) / kept.length) / (kept.length - 1));
}
