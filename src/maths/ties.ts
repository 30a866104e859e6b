/** Sizes of the groups of equal values, those of one value left out. Values must be finite. */
export function tieSizes(values: ArrayLike<number>): number[] {
  const sorted = Float64Array.from(values).sort();
  const sizes: number[] = [];
  let size = 1;
  for (let i = 1; i <= sorted.length; i++) {
    if (i < sorted.length && sorted[i] === sorted[i - 1]) size++;
    else {
      if (size > 1) sizes.push(size);
      size = 1;
    }
  }
  return sizes;
}

/** Ranks from 1, equal values sharing the mean of theirs. Values must be finite. */
export function midranks(values: ArrayLike<number>): Float64Array {
  const order = Array.from(values, (_, i) => i).sort((a, b) => values[a]! - values[b]!);
  const ranks = new Float64Array(values.length);
  for (let from = 0; from < order.length; ) {
    let to = from + 1;
    while (to < order.length && values[order[to]!] === values[order[from]!]) to++;
    for (let i = from; i < to; i++) ranks[order[i]!] = (from + 1 + to) / 2;
    from = to;
  }
  return ranks;
}

/** Variance of Kendall's S for n values with these groups of ties (Kendall, Rank Correlation Methods, 1975). */
export function kendallVariance(n: number, ...tieGroups: readonly number[][]): number {
  const part = (count: number): number => count * (count - 1) * (2 * count + 5);
  let sum = part(n);
  for (const sizes of tieGroups) for (const size of sizes) sum -= part(size);
  return sum / 18;
}
