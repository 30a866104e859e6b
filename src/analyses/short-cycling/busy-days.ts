import { median } from '../../maths/median.ts';
import type { Calendar, Grid } from '../../model/grid.ts';
import { samplesIn } from '../../model/grid.ts';
import { settings } from './settings.ts';
import type { StartRate } from './start-rate.ts';

export interface BusyPeriod {
  /** Hour of the log in which it began, and the hour after its last one; null when it lasts to the end. */
  readonly fromHour: number;
  readonly toHour: number | null;
  /** Starts an hour on its days, and on the days before it (NaN when there were too few). */
  readonly rate: number;
  readonly norm: number;
  /** Share of the days since it began that were busy. */
  readonly share: number;
}

/** Days of its own history that make a norm. */
const fewestNormDays = 3;

/**
 * The stretch in which a machine starts too often: on at least two days within seven it was over `limit` in three
 * hours, or its mean rate was above twice its own earlier norm and above `ownLimit`.
 */
export function busyPeriod(
  rate: StartRate,
  limit: number,
  ownLimit: number,
  grid: Grid,
  calendar: Calendar,
): BusyPeriod | null {
  const hour = samplesIn(grid, 60);
  const hoursOf = (day: number) => {
    const { from, to } = calendar.days[day]!;
    return { from: Math.round(from / hour), to: Math.round(to / hour) };
  };
  const norm = normBefore(rate.days);
  const isBusyHour = (k: number) => rate.hours[k]! > limit;
  const busy: number[] = [];
  calendar.days.forEach((_, day) => {
    const { from, to } = hoursOf(day);
    let over = 0;
    for (let k = from; k < to; k++) if (isBusyHour(k)) over++;
    const mean = rate.days[day]!;
    if (
      over >= settings.busyHours.value ||
      (day >= fewestNormDays && mean > settings.ownNorm.value * norm && mean > ownLimit)
    )
      busy.push(day);
  });
  const first = busy.findIndex((day, i) => (busy[i + settings.busyDays.value - 1] ?? Infinity) - day < 7);
  if (first < 0) return null;
  const firstDay = busy[first]!;
  const lastDay = busy.at(-1)!;
  const before = median(rate.days.subarray(0, firstDay));
  const since = rate.days.subarray(firstDay, lastDay + 1);
  const level = median(busy.filter((day) => day >= firstDay).map((day) => rate.days[day]!));
  const quiet = Number.isNaN(before) ? level / 2 : before;
  const last = lastKnownDay(rate.days);
  return {
    fromHour: firstHourAbove((level + quiet) / 2, rate.hours, hoursOf(Math.max(0, firstDay - 1)).from),
    toHour: last - lastDay <= 1 ? null : hoursOf(lastDay).to,
    rate: level,
    norm: before,
    share: busy.filter((day) => day >= firstDay).length / since.length,
  };
}

/** The machine's own usual rate: the median of the first third of its days. */
function normBefore(days: Float64Array): number {
  const known = days.filter((value) => !Number.isNaN(value));
  const third = Math.max(fewestNormDays, Math.ceil(known.length / 3));
  return known.length > fewestNormDays ? median(known.subarray(0, third)) : Number.NaN;
}

function lastKnownDay(days: Float64Array): number {
  let day = days.length - 1;
  while (day > 0 && Number.isNaN(days[day]!)) day--;
  return day;
}

/** First hour from `from` on above `level` with most of the six hours from it above it too. */
function firstHourAbove(level: number, hours: Float64Array, from: number): number {
  for (let k = from; k < hours.length; k++) {
    if (!(hours[k]! > level)) continue;
    const ahead = hours.subarray(k, k + 6).filter((count) => !Number.isNaN(count));
    if (2 * ahead.filter((count) => count > level).length > ahead.length) return k;
  }
  return from;
}
