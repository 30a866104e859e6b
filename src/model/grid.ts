import type { EpochMs } from '../units/quantities.ts';

/**
 * The common time axis of a log: `count` equal steps from `startMs`. Sample i stands for the instant
 * `startMs + i * stepMs`. Every aligned record of the log has exactly `count` values.
 */
export interface Grid {
  readonly startMs: EpochMs;
  readonly stepMs: number;
  readonly count: number;
}

/** One local day on the grid: samples `from` (inclusive) to `to` (exclusive). */
export interface LocalDay {
  /** Local date, `2026-09-01`. */
  readonly date: string;
  /** 0 Sunday to 6 Saturday. */
  readonly weekday: number;
  readonly from: number;
  readonly to: number;
  /** Length of this day on the clock of the site: 24, or 23 or 25 when the clocks change. */
  readonly hours: number;
}

/** Local time laid over the grid, so that nothing downstream needs a time zone database. */
export interface Calendar {
  readonly timeZone: string;
  readonly days: readonly LocalDay[];
  /** Offset from UTC in minutes, from sample `from` on; ordered, the first entry at 0. */
  readonly offsets: readonly { readonly from: number; readonly offsetMinutes: number }[];
}

export function timeAt(grid: Grid, index: number): EpochMs {
  return grid.startMs + index * grid.stepMs;
}

/** The sample nearest to `time`, held inside the grid. */
export function indexAt(grid: Grid, time: EpochMs): number {
  const index = Math.round((time - grid.startMs) / grid.stepMs);
  return Math.max(0, Math.min(grid.count - 1, index));
}

export function stepMinutes(grid: Grid): number {
  return grid.stepMs / 60_000;
}

export function samplesIn(grid: Grid, minutes: number): number {
  return Math.max(1, Math.round((minutes * 60_000) / grid.stepMs));
}

/** Offset from UTC in minutes at sample `index`. */
export function offsetAt(calendar: Calendar, index: number): number {
  let offset = calendar.offsets[0]?.offsetMinutes ?? 0;
  for (const segment of calendar.offsets) {
    if (segment.from > index) break;
    offset = segment.offsetMinutes;
  }
  return offset;
}

/** Minutes past local midnight at sample `index`, 0 to 1439. */
export function minuteOfDay(grid: Grid, calendar: Calendar, index: number): number {
  const localMinutes = Math.floor(timeAt(grid, index) / 60_000) + offsetAt(calendar, index);
  return ((localMinutes % 1440) + 1440) % 1440;
}

/** Position in `calendar.days` of the day that holds sample `index`. */
export function dayAt(calendar: Calendar, index: number): number {
  let low = 0;
  let high = calendar.days.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (calendar.days[middle]!.from <= index) low = middle;
    else high = middle - 1;
  }
  return low;
}
