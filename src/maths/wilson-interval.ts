import { normalQuantile } from './normal-distribution.ts';

/** Interval of a share from `successes` in `trials` (Wilson, J. Am. Stat. Assoc. 22 (1927) 209), without continuity correction. */
export function wilsonInterval(
  successes: number,
  trials: number,
  confidence = 0.95,
): { low: number; high: number } {
  if (!(trials > 0)) return { low: 0, high: 1 };
  const z = normalQuantile((1 + confidence) / 2);
  const share = successes / trials;
  const centre = share + (z * z) / (2 * trials);
  const width = z * Math.sqrt((share * (1 - share) + (z * z) / (4 * trials)) / trials);
  const whole = 1 + (z * z) / trials;
  return { low: Math.max(0, (centre - width) / whole), high: Math.min(1, (centre + width) / whole) };
}
