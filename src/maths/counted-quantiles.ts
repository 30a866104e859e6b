/**
 * Quantiles of R's type 7 of values of which each is given once, with how often it occurs: the same to the last digit as
 * `selectQuantiles` of all of them.
 *
 * @param values ascending
 * @param counts one a value
 * @param probabilities ascending, each within 0 to 1
 * @param total sum of the counts
 * @returns NaN each when nothing was counted
 */
export function countedQuantiles(
  values: Float64Array,
  counts: Int32Array | Uint16Array,
  probabilities: readonly number[],
  total: number,
): number[] {
  let k = -1;
  let upTo = 0;
  const valueAt = (rank: number): number => {
    while (upTo <= rank) upTo += counts[++k]!;
    return values[k]!;
  };
  return probabilities.map((probability) => {
    if (total === 0) return Number.NaN;
    const place = (total - 1) * probability;
    const below = Math.floor(place);
    const low = valueAt(below);
    if (place === below) return low;
    const next = upTo > below + 1 ? low : values[nextCounted(counts, k + 1)]!;
    return low + (place - below) * (next - low);
  });
}

function nextCounted(counts: Int32Array | Uint16Array, from: number): number {
  let k = from;
  while (counts[k] === 0) k++;
  return k;
}
