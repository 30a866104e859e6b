import type { Grid } from '../../model/grid.ts';
import { samplesIn } from '../../model/grid.ts';
import type { Target } from '../../model/record.ts';

/** Mean of each hour from the start of the log; NaN where less than half of it is known. */
export function hourlyMeans(target: Target | null, grid: Grid): Float64Array {
  const hour = samplesIn(grid, 60);
  const hours = new Float64Array(Math.ceil(grid.count / hour));
  if (target === null || typeof target === 'number') return hours.fill(target ?? Number.NaN);
  for (let k = 0; k < hours.length; k++) {
    let sum = 0;
    let known = 0;
    for (let i = k * hour; i < Math.min(grid.count, (k + 1) * hour); i++) {
      const value = target.values[i]!;
      if (Number.isNaN(value)) continue;
      sum += value;
      known++;
    }
    hours[k] = 2 * known >= hour ? sum / known : Number.NaN;
  }
  return hours;
}

/** The hours that begin on each day of the calendar, half open. */
export function hoursOfDay(day: { readonly from: number; readonly to: number }, grid: Grid) {
  const hour = samplesIn(grid, 60);
  return { from: Math.round(day.from / hour), to: Math.round(day.to / hour) };
}
