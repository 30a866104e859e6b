/**
 * Exponentially weighted moving average, s = s + weight · (y − s), started at the first known value (NIST
 * Handbook 6.3.2.4). A missing value gives NaN and leaves the average as it was.
 */
export function ewma(values: ArrayLike<number>, weight: number): Float64Array {
  const smoothed = new Float64Array(values.length);
  let level = Number.NaN;
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (!Number.isFinite(value)) {
      smoothed[i] = Number.NaN;
      continue;
    }
    level = Number.isNaN(level) ? value : level + weight * (value - level);
    smoothed[i] = level;
  }
  return smoothed;
}
