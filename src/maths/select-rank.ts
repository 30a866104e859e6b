/** From here on a pivot is the middle of three values, so that ordered readings are no worst case. */
const fewestCompared = 64;

/**
 * The value of the given rank, from 0, among the first `count`, without sorting the rest; rearranges `values`, which
 * must hold no NaN there. Linear time on average. Values before `from` are known to be no larger than those after it,
 * and stay where they are; afterwards all that is left of `rank` is no larger, all that is right of it no smaller.
 *
 * Hoare's selection (Find, Communications of the ACM 4 (1961) 321) with Lomuto's partition, written so that no branch
 * hangs on a comparison of values: that is twice as fast as a selection that branches, by the thirty readings of a half
 * hour as by the thirty thousand of a month. Where the pivot is the smallest, a second pass gathers its ties, so that
 * readings in coarse steps are no worst case.
 */
export function selectRank(values: Float64Array, rank: number, count = values.length, from = 0): number {
  let to = count - 1;
  while (from < to) {
    const pivotAt = to - from < fewestCompared ? (from + to) >> 1 : middleOfThree(values, from, to);
    const pivot = values[pivotAt]!;
    values[pivotAt] = values[to]!;
    values[to] = pivot;
    let place = from;
    for (let i = from; i < to; i++) {
      const value = values[i]!;
      values[i] = values[place]!;
      values[place] = value;
      place += Number(value < pivot);
    }
    const smaller = place;
    if (smaller === from && rank > from) {
      for (let i = smaller; i < to; i++) {
        const value = values[i]!;
        values[i] = values[place]!;
        values[place] = value;
        place += Number(value === pivot);
      }
    }
    values[to] = values[place]!;
    values[place] = pivot;
    if (rank < smaller) to = smaller - 1;
    else if (rank > place) from = place + 1;
    else break;
  }
  return values[rank]!;
}

/** Where the middle one of the first, the middle and the last value stands. */
function middleOfThree(values: Float64Array, first: number, last: number): number {
  const middle = (first + last) >> 1;
  const a = values[first]!;
  const b = values[middle]!;
  const c = values[last]!;
  if (a < b === b < c) return middle;
  return a < b === a < c ? last : first;
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
