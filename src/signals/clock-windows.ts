import type { Calendar, Grid, LocalDay } from '../model/grid.ts';
import { minuteOfDay, samplesIn, timeAt } from '../model/grid.ts';

const nightMinutes = [60, 300] as const;
/** 10:00 to 20:00: a store is open and busy, whatever its hours. Common practice, no source. */
export const tradingMinutes = [600, 1200] as const;

interface Window {
  readonly from: number;
  readonly to: number;
}

/** The samples of one local day from 01:00 to 05:00 and from 10:00 to 20:00, half open. */
export interface ClockWindows {
  readonly night: Window;
  readonly trading: Window;
}

/** One entry a day of the calendar; the same for every circuit of a log. */
export function clockWindows(grid: Grid, calendar: Calendar): ClockWindows[] {
  return calendar.days.map((day) => ({
    night: clockWindow(grid, calendar, day, nightMinutes),
    trading: clockWindow(grid, calendar, day, tradingMinutes),
  }));
}

/** The samples of `day` between two minutes of the local clock, to five minutes; empty, its end before its start, where there are none. */
function clockWindow(
  grid: Grid,
  calendar: Calendar,
  day: LocalDay,
  [opening, closing]: readonly [number, number],
): Window {
  const clocksChange = calendar.offsets.some(({ from }) => from > day.from && from < day.to);
  if (clocksChange) return searchedWindow(grid, calendar, day, opening, closing);
  const from = firstAtMinute(grid, calendar, day, opening);
  const to = Math.min(day.to, firstAtMinute(grid, calendar, day, closing));
  return from < to ? { from, to } : { from: day.to, to: day.from };
}

/** The first of every fifth minute's samples, from the start of `day` on, whose clock shows `minute` or later; maybe past its end. */
function firstAtMinute(grid: Grid, calendar: Calendar, day: LocalDay, minute: number): number {
  const step = samplesIn(grid, 5);
  const startMs = timeAt(grid, day.from);
  const later = minute - minuteOfDay(grid, calendar, day.from);
  const thenMs = 60_000 * Math.ceil(Math.floor(startMs / 60_000) + later);
  return day.from + step * Math.max(0, Math.ceil((thenMs - startMs) / (step * grid.stepMs)));
}

/** On a day on which the clock shows a time twice, or not at all. */
function searchedWindow(
  grid: Grid,
  calendar: Calendar,
  day: LocalDay,
  opening: number,
  closing: number,
): Window {
  let from = day.to;
  let to = day.from;
  const step = samplesIn(grid, 5);
  for (let i = day.from; i < day.to; i += step) {
    const minute = minuteOfDay(grid, calendar, i);
    if (minute < opening || minute >= closing) continue;
    from = Math.min(from, i);
    to = Math.min(day.to, i + step);
  }
  return { from, to };
}
