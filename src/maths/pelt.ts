import { type ChangePenalty, lengthCost, penaltyFor } from './change-penalty.ts';
import { SegmentCost } from './segment-cost.ts';

/**
 * All changes of the mean, by the exact search PELT (Killick, Fearnhead and Eckley, J. Am. Stat. Assoc. 107 (2012)
 * 1590). `values` in units of the noise (see `standardised`) and finite. Returns the indices at which a new
 * segment begins, ascending; segments have at least `shortest` samples. Linear in n where changes are frequent, up to
 * O(n²) where there is none.
 */
export function pelt(values: ArrayLike<number>, penalty: ChangePenalty = 'MBIC', shortest = 1): number[] {
  const n = values.length;
  if (n < 2 * shortest) return [];
  const cost = new SegmentCost(values);
  const perChange = penaltyFor(penalty, n);
  const best = new Float64Array(n + 1).fill(Number.POSITIVE_INFINITY);
  const lastChange = new Int32Array(n + 1);
  best[0] = -perChange;
  let candidates: number[] = [];
  const beatenAt = new Int32Array(n + 1).fill(n + 1);
  // A length cost is concave: pruning allows for what a longer segment may still save by it.
  const slack = lengthCost(penalty, n);
  for (let to = shortest; to <= n; to++) {
    if (to - shortest === 0 || to - shortest >= shortest) candidates.push(to - shortest);
    const totals = candidates.map(
      (from) => best[from]! + cost.between(from, to) + lengthCost(penalty, to - from),
    );
    totals.forEach((total, i) => {
      if (total + perChange < best[to]!) {
        best[to] = total + perChange;
        lastChange[to] = candidates[i]!;
      }
    });
    candidates.forEach((from, i) => {
      if (totals[i]! > best[to]! + slack) beatenAt[from] = Math.min(beatenAt[from]!, to);
    });
    // The one that beat it can only take over once its own segment is long enough.
    candidates = candidates.filter((from) => to - beatenAt[from]! < shortest - 1);
  }
  const changes: number[] = [];
  for (let to = lastChange[n]!; to > 0; to = lastChange[to]!) changes.unshift(to);
  return changes;
}
