import type { Log } from '../model/log.ts';
import { formatDay, formatDayAndTime, offsetMinutesAt } from '../units/display-time.ts';
import type { EpochMs } from '../units/quantities.ts';

const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

/** The site's wall clock at `time`, readable through the UTC getters. */
export function wallClock(log: Log, time: EpochMs): Date {
  return new Date(time + offsetMinutesAt(time, log) * 60_000);
}

/** `Fri 11 Sep` on the site's clock. */
export function dayText(log: Log, time: EpochMs): string {
  return formatDay(time, log);
}

/** `Fri 11 Sep, 04:00` on the site's clock. */
export function dayAndTimeText(log: Log, time: EpochMs): string {
  return formatDayAndTime(time, log);
}

/** `1 Sep to 30 Sep 2026`, `1 Sep 2026`. */
export function spanText(log: Log): string {
  const { startMs, stepMs, count } = log.grid;
  const start = wallClock(log, startMs);
  const end = wallClock(log, startMs + (count - 1) * stepMs);
  const day = (clock: Date): string => `${clock.getUTCDate()} ${months[clock.getUTCMonth()]}`;
  const startYear = start.getUTCFullYear() === end.getUTCFullYear() ? '' : ` ${start.getUTCFullYear()}`;
  const last = `${day(end)} ${end.getUTCFullYear()}`;
  return day(start) === day(end) && startYear === '' ? last : `${day(start)}${startYear} to ${last}`;
}

/** The last instant of the log. */
export function endOf(log: Log): EpochMs {
  return log.grid.startMs + (log.grid.count - 1) * log.grid.stepMs;
}
