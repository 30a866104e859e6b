/** Up to so many values an insertion sort in place is faster than an allocation and a selection. */
export const mostSorted = 40;

const sorted = new Float64Array(mostSorted);

/**
 * `quantile` of at most `mostSorted` values: the analyses ask for the median of an hour or of a month of daily figures
 * hundreds of thousands of times.
 */
export function quantileOfFew(values: ArrayLike<number>, probability: number): number {
  // Two loops: one that met typed arrays only stays fast when others bring arrays of every kind.
  const count = values instanceof Float64Array ? sortTyped(values) : sortAny(values);
  const place = (count - 1) * probability;
  if (count === 0 || !(place >= 0 && probability <= 1)) return Number.NaN;
  const below = Math.floor(place);
  const low = sorted[below]!;
  return place === below ? low : low + (place - below) * (sorted[below + 1]! - low);
}

function sortTyped(values: Float64Array): number {
  let count = 0;
  for (let i = 0; i < values.length; i++) count = insert(values[i]!, count);
  return count;
}

function sortAny(values: ArrayLike<number>): number {
  let count = 0;
  for (let i = 0; i < values.length; i++) count = insert(values[i]!, count);
  return count;
}

/** Puts a value in its place among the first `count`; returns how many there are then. */
function insert(value: number, count: number): number {
  if (!Number.isFinite(value)) return count;
  let place = count;
  while (place > 0 && sorted[place - 1]! > value) {
    sorted[place] = sorted[place - 1]!;
    place--;
  }
  sorted[place] = value;
  return count + 1;
}
