import { median } from '../../maths/median.ts';
import { settings } from './settings.ts';

const leastStep = 8;
const daysLookedAt = 3;

export interface UnitChange {
  /** Position in the calendar of the first day in the other scale. */
  readonly day: number;
  /** By how much the column went up, K. */
  readonly by: number;
}

/** Of a change of scale the whole comes from one reading to the next; air that warms by as much takes a while. */
const leastLeap = 0.6;

/**
 * The day on which a column seems to go from one temperature unit to the other: what comes after is what came
 * before, read in the wrong scale. Null when none does.
 *
 * @param daily median of each day, Celsius
 */
export function unitChange(daily: Float64Array): UnitChange | null {
  for (let day = 2; day < daily.length - 1; day++) {
    const before = median(daily.subarray(Math.max(0, day - daysLookedAt), day));
    const after = median(daily.subarray(day, day + daysLookedAt));
    if (!(Math.abs(after - before) >= leastStep)) continue;
    const isFirst =
      Math.abs(daily[day]! - after) < leastStep / 2 && Math.abs(daily[day - 1]! - before) < leastStep / 2;
    if (!isFirst) continue;
    const celsiusReadAsFahrenheit = (before - 32) / 1.8;
    const fahrenheitReadAsCelsius = before * 1.8 + 32;
    const miss = Math.min(
      Math.abs(after - celsiusReadAsFahrenheit),
      Math.abs(after - fahrenheitReadAsCelsius),
    );
    if (miss <= settings.unitTolerance.value) return { day, by: after - before };
  }
  return null;
}

/** Whether the readings of a stretch leap by `leastLeap` of the change between two that follow each other. */
export function leaps(values: Float64Array, by: number): boolean {
  let last = Number.NaN;
  for (const value of values) {
    if (Number.isNaN(value)) continue;
    if ((value - last) / by >= leastLeap) return true;
    last = value;
  }
  return false;
}
