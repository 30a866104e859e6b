import { quickselect } from 'simple-statistics';

/** Longer selections sample before they partition (Floyd and Rivest 1975), which pays off only there. */
const fewestSampled = 600;

/**
 * The value of the given rank, from 0, among the first `count`, without sorting the rest; rearranges `values`, which
 * must hold no NaN there. Linear time on average. Values before `from` are known to be no larger than those after it,
 * and stay where they are; afterwards all that is left of `rank` is no larger, all that is right of it no smaller.
 */
export function selectRank(values: Float64Array, rank: number, count = values.length, from = 0): number {
  // simple-statistics only reads and writes by index.
  if (count - from > fewestSampled) quickselect(values as unknown as number[], rank, from, count - 1);
  else selectAmongFew(values, rank, from, count - 1);
  return values[rank]!;
}

/**
 * Hoare's selection with Lomuto's partition, written so that no branch hangs on a comparison of values: for the thirty
 * readings of a half hour that is twice as fast as one that branches. Where the pivot is the
 * smallest, a second pass gathers its ties, so that readings in coarse steps are no worst case.
 */
function selectAmongFew(values: Float64Array, rank: number, from: number, to: number): void {
  while (from < to) {
    const middle = (from + to) >> 1;
    const pivot = values[middle]!;
    values[middle] = values[to]!;
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
    else return;
  }
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
