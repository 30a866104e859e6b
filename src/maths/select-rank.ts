import { quickselect } from 'simple-statistics';

/**
 * The value of the given rank, from 0, among the first `count`, without sorting the rest; rearranges `values`, which
 * must hold no NaN there. Linear time on average (Floyd and Rivest 1975, in simple-statistics, which only reads and
 * writes by index). Values before `from` are known to be no larger than those after it, and stay where they are.
 */
export function selectRank(values: Float64Array, rank: number, count = values.length, from = 0): number {
  if (count - from > 1) quickselect(values as unknown as number[], rank, from, count - 1);
  return values[rank]!;
}

/** The quantile of R's type 7 of the first `count` values; rearranges them, and they must hold no NaN. NaN of none. */
export function selectQuantile(values: Float64Array, probability: number, count = values.length): number {
  return quantileFrom(values, probability, count, 0);
}

/**
 * Several such quantiles, for ascending `probabilities`: each is looked for only to the right of the one before,
 * where the selection has left everything that is larger.
 */
export function selectQuantiles(
  values: Float64Array,
  probabilities: readonly number[],
  count = values.length,
): number[] {
  let from = 0;
  return probabilities.map((probability) => {
    const found = quantileFrom(values, probability, count, from);
    from = Math.floor(Math.max(0, count - 1) * probability);
    return found;
  });
}

function quantileFrom(values: Float64Array, probability: number, count: number, from: number): number {
  const place = (count - 1) * probability;
  if (count === 0 || !(place >= 0 && probability <= 1)) return Number.NaN;
  const below = Math.floor(place);
  const low = selectRank(values, below, count, from);
  if (place === below) return low;
  // After the selection everything right of `below` is at least as large; the next in rank is its smallest.
  let next = Number.POSITIVE_INFINITY;
  for (let i = below + 1; i < count; i++) if (values[i]! < next) next = values[i]!;
  return low + (place - below) * (next - low);
}
