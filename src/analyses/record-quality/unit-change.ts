import { median } from '../../maths/median.ts';
import { settings } from './settings.ts';

const leastStep = 8;
const daysLookedAt = 3;

/**
 * The day on which a column seems to go from one temperature unit to the other: what comes after is what came
 * before, read in the wrong scale. Null when none does.
 *
 * @param daily median of each day, Celsius
 */
export function unitChangeDay(daily: Float64Array): number | null {
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
    if (miss <= settings.unitTolerance.value) return day;
  }
  return null;
}
