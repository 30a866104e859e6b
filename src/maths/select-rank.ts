import { quickselect } from 'simple-statistics';

/**
 * The value of the given rank, from 0, among the first `count`, without sorting the rest; rearranges `values`, which
 * must hold no NaN there. Linear time on average (Floyd and Rivest 1975, in simple-statistics, which only reads and
 * writes by index).
 */
export function selectRank(values: Float64Array, rank: number, count = values.length): number {
  if (count > 1) quickselect(values as unknown as number[], rank, 0, count - 1);
  return values[rank]!;
}

/** The quantile of R's type 7 of the first `count` values; rearranges them, and they must hold no NaN. NaN of none. */
export function selectQuantile(values: Float64Array, probability: number, count = values.length): number {
  const place = (count - 1) * probability;
  if (count === 0 || !(place >= 0 && probability <= 1)) return Number.NaN;
  const below = Math.floor(place);
  const low = selectRank(values, below, count);
  if (place === below) return low;
  // After the selection everything right of `below` is at least as large; the next in rank is its smallest.
  let next = Number.POSITIVE_INFINITY;
  for (let i = below + 1; i < count; i++) if (values[i]! < next) next = values[i]!;
  return low + (place - below) * (next - low);
}
