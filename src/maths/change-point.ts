import { type ChangePenalty, lengthCost, penaltyFor } from './change-penalty.ts';
import { SegmentCost } from './segment-cost.ts';

/**
 * At most one change of the mean (AMOC): the split that saves most, if it saves more than the penalty. `values` in
 * units of the noise and finite. `at` is the index of the first value after the change, null for none; `saving` what the
 * best split saves, in squared noise units. With MBIC the undivided series carries its length cost as well, as in PELT.
 */
export function changePoint(
  values: ArrayLike<number>,
  penalty: ChangePenalty = 'MBIC',
): { readonly at: number | null; readonly saving: number } {
  const n = values.length;
  if (n < 2) return { at: null, saving: 0 };
  const cost = new SegmentCost(values);
  const whole = cost.between(0, n) + lengthCost(penalty, n);
  let at = 0;
  let saving = Number.NEGATIVE_INFINITY;
  for (let split = 1; split < n; split++) {
    const parts = cost.between(0, split) + cost.between(split, n);
    const saved = whole - parts - lengthCost(penalty, split) - lengthCost(penalty, n - split);
    if (saved > saving) {
      saving = saved;
      at = split;
    }
  }
  return { at: saving > penaltyFor(penalty, n) ? at : null, saving };
}
