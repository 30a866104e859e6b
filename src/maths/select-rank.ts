import { quickselect } from 'simple-statistics';

/**
 * The value of the given rank, from 0, without sorting the rest; rearranges `values`, which must hold no NaN.
 * Linear time on average (Floyd and Rivest 1975, in simple-statistics, which only reads and writes by index).
 */
export function selectRank(values: Float64Array, rank: number): number {
  quickselect(values as unknown as number[], rank);
  return values[rank]!;
}

/** The quantile of R's type 7; rearranges `values`, which must hold no NaN. NaN for an empty array. */
export function selectQuantile(values: Float64Array, probability: number): number {
  const place = (values.length - 1) * probability;
  if (values.length === 0 || !(place >= 0 && probability <= 1)) return Number.NaN;
  const below = Math.floor(place);
  const low = selectRank(values, below);
  if (place === below) return low;
  // After the selection everything right of `below` is at least as large; the next in rank is its smallest.
  let next = Number.POSITIVE_INFINITY;
  for (let i = below + 1; i < values.length; i++) if (values[i]! < next) next = values[i]!;
  return low + (place - below) * (next - low);
}
