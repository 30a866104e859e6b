/** Stretches short enough that the engine compiles their loop as a function, once, not as a part of each long one. */
const stretch = 2048;

/** How many of `values` from `from` to `to` (exclusive) are known, that is, not NaN. */
export function knownCount(values: Float64Array, from = 0, to = values.length): number {
  let known = 0;
  for (let at = from; at < to; at += stretch) known += knownInStretch(values, at, Math.min(to, at + stretch));
  return known;
}

function knownInStretch(values: Float64Array, from: number, to: number): number {
  let known = 0;
  for (let i = from; i < to; i++) known += Number(!Number.isNaN(values[i]!));
  return known;
}
