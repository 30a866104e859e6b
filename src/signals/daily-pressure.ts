import type { Calendar } from '../model/grid.ts';
import type { Target } from '../model/record.ts';
import { BinnedValues } from './binned-values.ts';

/** Daily medians of a pressure or of its target, kPa; NaN for days of which half is not known. */
export function dailyPressure(target: Target | null, calendar: Calendar): Float64Array {
  const days = new Float64Array(calendar.days.length).fill(typeof target === 'number' ? target : Number.NaN);
  if (target === null || typeof target === 'number') return days;
  const bins = new BinnedValues(Math.max(0.2, target.resolution), 0, 4000);
  calendar.days.forEach((day, d) => {
    bins.clear();
    bins.addKnown(target.values, day.from, day.to);
    if (2 * bins.total >= day.to - day.from) days[d] = bins.quantile(0.5);
  });
  return days;
}
