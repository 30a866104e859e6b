import { median } from '../../maths/median.ts';
import { medianAbsoluteDeviation, normalConsistency } from '../../maths/median-absolute-deviation.ts';

/** A lasting change of level in a row of events. */
export interface Change {
  /** First event of the new level. */
  readonly at: number;
  readonly before: number;
  readonly after: number;
  /** Robust scale of the events about their own levels. */
  readonly scatter: number;
}

const fewestEvents = 3;

/**
 * The place at which `values`, in order, part best into two levels: the split with the least sum of squares about
 * the two means; the levels
 * are medians. Null for fewer than three events on either side.
 */
export function levelChange(values: readonly number[]): Change | null {
  const places = new Int32Array(values.length);
  const known = new Float64Array(values.length);
  let n = 0;
  for (let i = 0; i < values.length; i++) {
    if (!Number.isFinite(values[i]!)) continue;
    places[n] = i;
    known[n++] = values[i]!;
  }
  if (n < 2 * fewestEvents) return null;
  const sums = new Float64Array(n + 1);
  const squares = new Float64Array(n + 1);
  for (let k = 0; k < n; k++) {
    const value = known[k]!;
    sums[k + 1] = sums[k]! + value;
    squares[k + 1] = squares[k]! + value * value;
  }
  const cost = (from: number, to: number) =>
    squares[to]! - squares[from]! - (sums[to]! - sums[from]!) ** 2 / (to - from);
  let split = fewestEvents;
  let least = cost(0, split) + cost(split, n);
  for (let k = fewestEvents + 1; k <= n - fewestEvents; k++) {
    const parts = cost(0, k) + cost(k, n);
    if (!(parts < least)) continue;
    least = parts;
    split = k;
  }
  const before = median(known.subarray(0, split));
  const after = median(known.subarray(split, n));
  const residuals = known.subarray(0, n).map((value, k) => value - (k < split ? before : after));
  return {
    at: places[split]!,
    before,
    after,
    scatter: normalConsistency * medianAbsoluteDeviation(residuals),
  };
}
