import type { Log } from '../../model/log.ts';
import { dayText, wallClock } from '../local-time.ts';

export interface TimeTick {
  readonly time: number;
  readonly label: string;
  /** Left out on narrow screens. */
  readonly minor: boolean;
}

const hour = 3_600_000;
const day = 24 * hour;

/** Local midnights for spans of days, local hours for a close-up; about eight of them. */
export function timeTicks(log: Log, from: number, to: number): readonly TimeTick[] {
  return to - from > 2.5 * day ? dayTicks(log, from, to) : hourTicks(log, from, to);
}

function dayTicks(log: Log, from: number, to: number): readonly TimeTick[] {
  const midnights = log.calendar.days
    .map(({ from: sample }) => log.grid.startMs + sample * log.grid.stepMs)
    .filter((time) => time >= from && time <= to);
  const every = [1, 2, 3, 5, 7, 14, 28].find((days) => midnights.length / days <= 9) ?? 60;
  return midnights
    .filter((_, index) => index % every === 0)
    .map((time, index) => ({
      time,
      label: dayText(log, time).replace(/^\w+ /, ''),
      minor: index % 2 === 1,
    }));
}

function hourTicks(log: Log, from: number, to: number): readonly TimeTick[] {
  const every = [1, 2, 3, 4, 6, 12].find((hours) => (to - from) / (hours * hour) <= 9) ?? 24;
  const ticks: TimeTick[] = [];
  // Quarter hours, for zones that stand between the hours of UTC.
  const step = hour / 4;
  for (let time = Math.ceil(from / step) * step; time <= to; time += step) {
    const clock = wallClock(log, time);
    if (clock.getUTCMinutes() !== 0 || clock.getUTCHours() % every !== 0) continue;
    const label =
      clock.getUTCHours() === 0
        ? dayText(log, time).replace(/^\w+ /, '')
        : `${String(clock.getUTCHours()).padStart(2, '0')}:00`;
    ticks.push({ time, label, minor: ticks.length % 2 === 1 });
  }
  return ticks;
}
