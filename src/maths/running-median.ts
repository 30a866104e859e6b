/**
 * Median of the window of `width` samples (made odd by rounding up) centred on each sample. The window is cut at the
 * ends of the series and leaves out values that are not finite; NaN where it holds none.
 *
 * O(n log u) for u different values: counts by rank in a Fenwick tree (P. M. Fenwick, Software: Practice and
 * Experience 24 (1994) 327), from which the middle ranks are read by descent.
 */
export function runningMedian(values: ArrayLike<number>, width: number): Float64Array {
  const half = Math.floor(width / 2);
  const { distinct, ranks } = rankValues(values);
  const counts = new RankCounts(distinct.length);
  const medians = new Float64Array(values.length);
  for (let i = 0; i < Math.min(half, values.length); i++) counts.add(ranks[i]!, 1);
  for (let i = 0; i < values.length; i++) {
    if (i + half < values.length) counts.add(ranks[i + half]!, 1);
    if (i - half - 1 >= 0) counts.add(ranks[i - half - 1]!, -1);
    const total = counts.total;
    if (total === 0) {
      medians[i] = Number.NaN;
      continue;
    }
    const upper = distinct[counts.rankOf(total >> 1)]!;
    medians[i] = total % 2 === 1 ? upper : (distinct[counts.rankOf((total >> 1) - 1)]! + upper) / 2;
  }
  return medians;
}

/** The different finite values in ascending order, and for each sample its place among them (−1 for none). */
function rankValues(values: ArrayLike<number>): { distinct: Float64Array; ranks: Int32Array } {
  const sorted = Float64Array.from(values).filter(Number.isFinite).sort();
  let count = 0;
  for (let i = 0; i < sorted.length; i++) {
    if (count === 0 || sorted[i] !== sorted[count - 1]) sorted[count++] = sorted[i]!;
  }
  const distinct = sorted.subarray(0, count);
  const ranks = new Int32Array(values.length);
  for (let i = 0; i < values.length; i++) ranks[i] = placeOf(distinct, values[i]!);
  return { distinct, ranks };
}

function placeOf(ascending: Float64Array, value: number): number {
  if (!Number.isFinite(value)) return -1;
  let low = 0;
  let high = ascending.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (ascending[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

class RankCounts {
  total = 0;
  private readonly tree: Int32Array;
  private readonly topStep: number;

  constructor(size: number) {
    this.tree = new Int32Array(size + 1);
    this.topStep = size === 0 ? 0 : 2 ** Math.floor(Math.log2(size));
  }

  add(rank: number, change: 1 | -1): void {
    if (rank < 0) return;
    this.total += change;
    for (let node = rank + 1; node < this.tree.length; node += node & -node) this.tree[node]! += change;
  }

  /** Rank of the value at `place`, from 0, among all counted ones in order. */
  rankOf(place: number): number {
    let node = 0;
    let left = place;
    for (let step = this.topStep; step > 0; step >>= 1) {
      const next = node + step;
      if (next < this.tree.length && this.tree[next]! <= left) {
        node = next;
        left -= this.tree[next]!;
      }
    }
    return node;
  }
}
