/** A copy without the values that are not finite numbers, in the same order. */
export function finiteValues(values: ArrayLike<number>): Float64Array {
  const kept = new Float64Array(values.length);
  return kept.subarray(0, keepFinite(values, kept));
}

/** Writes the finite ones of `values` to the front of `into`, in the same order, and says how many there are. */
export function keepFinite(values: ArrayLike<number>, into: Float64Array): number {
  // Two loops: one that meets typed arrays only stays fast when others bring arrays of every kind.
  return values instanceof Float64Array ? keepTyped(values, into) : keepAny(values, into);
}

function keepTyped(values: Float64Array, into: Float64Array): number {
  let count = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (Number.isFinite(value)) into[count++] = value;
  }
  return count;
}

function keepAny(values: ArrayLike<number>, into: Float64Array): number {
  let count = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (Number.isFinite(value)) into[count++] = value;
  }
  return count;
}

/** The pairs of which both halves are finite, in the same order. Throws a RangeError for unequal lengths. */
export function finitePairs(
  first: ArrayLike<number>,
  second: ArrayLike<number>,
): { readonly first: Float64Array; readonly second: Float64Array } {
  if (first.length !== second.length) {
    throw new RangeError(`Paired series differ in length: ${first.length} and ${second.length}.`);
  }
  const keptFirst = new Float64Array(first.length);
  const keptSecond = new Float64Array(first.length);
  let count = 0;
  for (let i = 0; i < first.length; i++) {
    if (!Number.isFinite(first[i]!) || !Number.isFinite(second[i]!)) continue;
    keptFirst[count] = first[i]!;
    keptSecond[count++] = second[i]!;
  }
  return { first: keptFirst.subarray(0, count), second: keptSecond.subarray(0, count) };
}
