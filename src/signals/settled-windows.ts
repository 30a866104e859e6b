import type { Calendar, Grid, LocalDay } from '../model/grid.ts';
import { minuteOfDay, samplesIn } from '../model/grid.ts';
import { Phase } from './types.ts';

/** Bits of a sample: in settled air (or not known to be otherwise), at night, in the trading day. */
export const settled = 1;
export const atNight = 2;
export const byDay = 4;

const nightMinutes = [60, 300] as const;
const dayMinutes = [600, 1200] as const;

/** Which samples count for the daily figures of a circuit's probes, and how many of them each day has. */
export interface SettledWindows {
  readonly flags: Uint8Array;
  readonly days: readonly { readonly all: number; readonly night: number; readonly day: number }[];
}

export function settledWindows(phase: Uint8Array, grid: Grid, calendar: Calendar): SettledWindows {
  const flags = new Uint8Array(grid.count);
  const days = calendar.days.map((day) => {
    const night = clockWindow(grid, calendar, day, nightMinutes);
    const trading = clockWindow(grid, calendar, day, dayMinutes);
    const counts = { all: 0, night: 0, day: 0 };
    for (let i = day.from; i < day.to; i++) {
      if (phase[i] !== Phase.cooling && phase[i] !== Phase.unknown) continue;
      let flag = settled;
      counts.all++;
      if (i >= night.from && i < night.to) {
        flag |= atNight;
        counts.night++;
      }
      if (i >= trading.from && i < trading.to) {
        flag |= byDay;
        counts.day++;
      }
      flags[i] = flag;
    }
    return counts;
  });
  return { flags, days };
}

/** The samples of `day` between two minutes of the local clock, to five minutes. */
function clockWindow(
  grid: Grid,
  calendar: Calendar,
  day: LocalDay,
  [opening, closing]: readonly [number, number],
) {
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
