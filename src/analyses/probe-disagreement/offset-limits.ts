/** Between which values the half-hour medians of a pair of probes lie, K; NaN where there is none. */
export interface OffsetLimits {
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/** What rounding may take from a standard deviation that is told from sums of squares, K. */
const rounding = 1e-5;

/**
 * From the mean and the standard deviation of each half hour, which cost no selection: a median lies within one standard
 * deviation of the mean (Hotelling and Solomons, Annals of Mathematical Statistics 3 (1932) 141).
 *
 * @param sumBlock writes the sum of a half hour's differences, and of their squares, to `sums`, and says how many they are: 0
 *   where the half hour has no median
 */
export function limitsOf(
  blocks: number,
  sumBlock: (block: number, sums: Float64Array) => number,
): OffsetLimits {
  const low = new Float64Array(blocks).fill(Number.NaN);
  const high = new Float64Array(blocks).fill(Number.NaN);
  const sums = new Float64Array(2);
  for (let block = 0; block < blocks; block++) {
    const count = sumBlock(block, sums);
    if (count === 0) continue;
    const mean = sums[0]! / count;
    const deviation = Math.sqrt(Math.max(0, sums[1]! / count - mean * mean)) + rounding;
    low[block] = mean - deviation;
    high[block] = mean + deviation;
  }
  return { low, high };
}

/** The limits of the second probe minus the first. */
export function turned({ low, high }: OffsetLimits): OffsetLimits {
  return { low: negated(high), high: negated(low) };
}

export function negated(values: Float64Array): Float64Array {
  const negative = new Float64Array(values.length);
  for (let i = 0; i < values.length; i++) negative[i] = -values[i]!;
  return negative;
}
