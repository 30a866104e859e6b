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
 * @param eachBlock shows it the differences of every half hour that has a median
 */
export function limitsOf(
  blocks: number,
  eachBlock: (see: (block: number, differences: Float64Array, count: number) => void) => void,
): OffsetLimits {
  const low = new Float64Array(blocks).fill(Number.NaN);
  const high = new Float64Array(blocks).fill(Number.NaN);
  eachBlock((block, differences, count) => {
    let sum = 0;
    let squares = 0;
    for (let i = 0; i < count; i++) {
      const difference = differences[i]!;
      sum += difference;
      squares += difference * difference;
    }
    const mean = sum / count;
    const deviation = Math.sqrt(Math.max(0, squares / count - mean * mean)) + rounding;
    low[block] = mean - deviation;
    high[block] = mean + deviation;
  });
  return { low, high };
}

/** The limits of the second probe minus the first. */
export function turned({ low, high }: OffsetLimits): OffsetLimits {
  return { low: high.map((value) => -value), high: low.map((value) => -value) };
}
