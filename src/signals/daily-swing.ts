import type { Calendar, Grid } from '../model/grid.ts';
import { samplesIn } from '../model/grid.ts';
import type { Kelvin } from '../units/quantities.ts';
import { BinnedValues } from './binned-values.ts';

const bin: Kelvin = 0.02;

/**
 * Robust cycle amplitude of each day, K: p90 − p10 of what settled air deviates from its mean over the hour around it.
 * NaN on days without a level.
 *
 * @param flags one a sample, 0 outside settled air
 * @param level one a day
 */
export function dailySwings(
  values: Float64Array,
  flags: Uint8Array,
  level: Float64Array,
  grid: Grid,
  calendar: Calendar,
): Float64Array {
  const deviation = new Float64Array(values.length);
  deviationFromHour(values, flags, samplesIn(grid, 30), deviation);
  const bins = new BinnedValues(bin, -20, 20);
  return Float64Array.from(calendar.days, ({ from, to }, d) => {
    if (Number.isNaN(level[d]!)) return Number.NaN;
    bins.clear();
    bins.addKnown(deviation, from, to);
    return bins.quantile(0.9) - bins.quantile(0.1);
  });
}

/**
 * Each settled value less the mean of the settled values within `reach` samples either side, NaN where fewer than half of
 * those are known. Overwrites `deviation`, one entry a sample.
 */
function deviationFromHour(
  values: Float64Array,
  flags: Uint8Array,
  reach: number,
  deviation: Float64Array,
): void {
  const count = values.length;
  let sum = 0;
  let known = 0;
  let share = 0;
  for (let i = -reach; i < count; i++) {
    const before = known;
    const entering = i + reach;
    if (entering < count && flags[entering] !== 0 && !Number.isNaN(values[entering]!)) {
      sum += values[entering]!;
      known++;
    }
    const leaving = i - reach - 1;
    if (leaving >= 0 && flags[leaving] !== 0 && !Number.isNaN(values[leaving]!)) {
      sum -= values[leaving]!;
      known--;
    }
    if (known !== before) share = 1 / known;
    if (i >= 0) deviation[i] = known > reach && flags[i] !== 0 ? values[i]! - sum * share : Number.NaN;
  }
}
