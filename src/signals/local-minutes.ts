import type { Calendar, Grid, LocalDay } from '../model/grid.ts';
import { minuteOfDay, stepMinutes } from '../model/grid.ts';
import type { Minutes } from '../units/quantities.ts';

export const minutesADay = 1440;

/** The way from one minute of the day to another, the shorter way round: −720 to 719. */
export function minutesBetween(from: Minutes, to: Minutes): Minutes {
  return ((((to - from + minutesADay / 2) % minutesADay) + minutesADay) % minutesADay) - minutesADay / 2;
}

/**
 * The sample of `day` at which the local clock shows `minute`; null when the log does not hold it. In a repeated
 * hour the first of the two, in a skipped one the sample just after.
 */
export function sampleAtMinute(
  grid: Grid,
  calendar: Calendar,
  day: LocalDay,
  minute: Minutes,
): number | null {
  const step = stepMinutes(grid);
  const opening = minuteOfDay(grid, calendar, day.from);
  let index = day.from + Math.round((minute - opening) / step);
  if (index < day.from || index >= day.to) return null;
  const shown = minuteOfDay(grid, calendar, index);
  index -= Math.round(minutesBetween(minute, shown) / step);
  return index < day.from || index >= day.to ? null : index;
}
