import { selectQuantile } from './select-rank.ts';

/** Medians of an hour are asked for by the thousand: those need no allocation. */
const scratch = new Float64Array(1024);

/**
 * Median of the values from `from` to `to` (exclusive) whose entry in `flags` is `flag`. Values that are not finite are
 * left out; NaN when none remains.
 */
export function flaggedMedian(
  values: Float64Array,
  flags: Uint8Array,
  flag: number,
  from: number,
  to: number,
): number {
  const kept = to - from > scratch.length ? new Float64Array(to - from) : scratch;
  let count = 0;
  for (let i = from; i < to; i++) {
    if (flags[i] === flag && Number.isFinite(values[i]!)) kept[count++] = values[i]!;
  }
  return selectQuantile(kept, 0.5, count);
}
