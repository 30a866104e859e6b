import type { SampleRange } from '../exposure/exposure.ts';
import type { Log } from '../model/log.ts';

/** The part of a history that is audited: local days, from local midnight to local midnight. */
export interface Month {
  /** `2026-11`, or null for the whole span of the export. */
  readonly name: string | null;
  /** Positions in `calendar.days`. */
  readonly days: readonly number[];
  readonly range: SampleRange;
  /** Hours on the site's clock: 743 or 745 in a month of 31 days in which the clocks change. */
  readonly hours: number;
  /** Days of the calendar month that the export holds nothing of. */
  readonly daysMissing: number;
}

const monthPattern = /^(\d{4})-(0[1-9]|1[0-2])$/;

export function isMonthName(text: string): boolean {
  return monthPattern.test(text);
}

/** Days in a month of the Gregorian calendar. */
function daysIn(name: string): number {
  const [, year, month] = monthPattern.exec(name)!;
  return new Date(Date.UTC(Number(year), Number(month), 0)).getUTCDate();
}

/** Null when the export holds no day of the month. Days that it holds nothing of are counted with 24 hours. */
export function monthOf(log: Log, name: string | null): Month | null {
  const { days: all } = log.calendar;
  const days = all.flatMap(({ date }, d) => (name === null || date.startsWith(`${name}-`) ? [d] : []));
  if (days.length === 0) return null;
  const daysMissing = name === null ? 0 : daysIn(name) - days.length;
  return {
    name,
    days,
    range: { from: all[days[0]!]!.from, to: all[days.at(-1)!]!.to },
    hours: days.reduce((sum, d) => sum + all[d]!.hours, 0) + daysMissing * 24,
    daysMissing,
  };
}

/** The months that the history touches, in order. */
export function monthsIn(log: Log): string[] {
  return [...new Set(log.calendar.days.map(({ date }) => date.slice(0, 7)))];
}

/** The months that the history holds whole; an hour at either end may be missing. */
export function fullMonths(log: Log): string[] {
  return monthsIn(log).filter((name) => {
    const month = monthOf(log, name)!;
    const hours = ((month.range.to - month.range.from) * log.grid.stepMs) / 3_600_000;
    return month.daysMissing === 0 && hours > month.hours - 2;
  });
}

/** `November 2026: 30 days, 721 hours (the clocks change on 2026-11-01)`. */
export function monthSentence(log: Log, month: Month): string {
  const days = month.days.map((d) => log.calendar.days[d]!);
  const changes = days.filter(({ hours }) => hours !== 24);
  const first = days[0]!.date;
  const last = days.at(-1)!.date;
  const change =
    changes.length === 0
      ? ''
      : ` (the clocks change on ${changes.map(({ date, hours }) => `${date}, a day of ${hours} hours`).join(' and ')})`;
  const missing =
    month.daysMissing === 0
      ? ''
      : `; the export holds ${days.length} of its ${days.length + month.daysMissing} days`;
  const what = month.name === null ? `${first} to ${last}` : `Month ${month.name}, ${first} to ${last}`;
  return `${what}: ${month.hours} hours on the site's clock${change}${missing}.`;
}
