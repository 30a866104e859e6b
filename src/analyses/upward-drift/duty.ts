import { median } from '../../maths/median.ts';
import type { CircuitSignals } from '../../signals/types.ts';

/**
 * Daily share of time the valve feeds, minus how far the same share of the other circuits moved from its own
 * usual value: weather and trading days raise all of them together. NaN without a valve column.
 */
export function dutyAgainstOthers(signals: CircuitSignals, members: readonly CircuitSignals[]): Float64Array {
  const moved = members
    .filter((other) => other !== signals)
    .map((other) => {
      const usual = median(other.duty);
      return other.duty.map((value) => value - usual);
    });
  return signals.duty.map((value, day) => {
    const common = median(moved.map((other) => other[day]!));
    return value - (Number.isFinite(common) ? common : 0);
  });
}
