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
  const known = values.map((value, i) => ({ value, i })).filter(({ value }) => Number.isFinite(value));
  const n = known.length;
  if (n < 2 * fewestEvents) return null;
  const sums = new Float64Array(n + 1);
  const squares = new Float64Array(n + 1);
  known.forEach(({ value }, k) => {
    sums[k + 1] = sums[k]! + value;
    squares[k + 1] = squares[k]! + value * value;
  });
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
  const left = known.slice(0, split).map(({ value }) => value);
  const right = known.slice(split).map(({ value }) => value);
  const before = median(left);
  const after = median(right);
  const residuals = [...left.map((value) => value - before), ...right.map((value) => value - after)];
  return {
    at: known[split]!.i,
    before,
    after,
    scatter: normalConsistency * medianAbsoluteDeviation(residuals),
  };
}
