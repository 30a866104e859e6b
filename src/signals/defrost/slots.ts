import type { Calendar, Grid } from '../../model/grid.ts';
import { dayAt, minuteOfDay } from '../../model/grid.ts';
import type { Minutes } from '../../units/quantities.ts';
import { minutesADay, minutesBetween } from '../local-minutes.ts';

/** Starts this far from the usual minute still belong to its slot. */
export const slotToleranceMinutes: Minutes = 20;
/** A time of day is a slot when it was used on this share of the days between its first and last use. */
const slotShare = 0.6;
/** … over at least this many days. */
const fewestDays = 3;

export interface Slot {
  readonly minute: Minutes;
  /** Starts that belong to it. */
  readonly starts: readonly number[];
}

interface Start {
  readonly sample: number;
  readonly minute: Minutes;
  readonly day: number;
}

/**
 * Times of day at which defrosts recur, the most regular first: fold the starts by 24 hours and take, again and
 * again, the minute with the most days within ±20 minutes of it.
 */
export function recurringSlots(starts: readonly number[], grid: Grid, calendar: Calendar): Slot[] {
  let left: Start[] = starts.map((sample) => ({
    sample,
    minute: minuteOfDay(grid, calendar, sample),
    day: dayAt(calendar, sample),
  }));
  const slots: Slot[] = [];
  while (left.length >= fewestDays) {
    const best = fullestWindow(left);
    const days = new Set(best.map((start) => start.day));
    const range = Math.max(...days) - Math.min(...days) + 1;
    if (days.size < fewestDays || days.size < slotShare * range) {
      if (days.size < fewestDays) break;
      left = left.filter((start) => !best.includes(start));
      continue;
    }
    const minute = middleMinute(best);
    const isNew = slots.every(
      (slot) => Math.abs(minutesBetween(slot.minute, minute)) > 2 * slotToleranceMinutes,
    );
    if (isNew) slots.push({ minute, starts: best.map((start) => start.sample) });
    left = left.filter((start) => !best.includes(start));
  }
  return slots.sort((a, b) => a.minute - b.minute);
}

/** The starts within ±20 minutes of the minute around which most days have one, one start a day. */
function fullestWindow(starts: readonly Start[]): Start[] {
  let best: Start[] = [];
  for (const centre of new Set(starts.map((start) => start.minute))) {
    const near = starts.filter(
      (start) => Math.abs(minutesBetween(centre, start.minute)) <= slotToleranceMinutes,
    );
    if (near.length <= best.length) continue;
    const oneADay = nearestOfEachDay(near, centre);
    if (oneADay.length > best.length) best = oneADay;
  }
  return best;
}

function nearestOfEachDay(starts: readonly Start[], centre: Minutes): Start[] {
  const nearest = new Map<number, Start>();
  const away = (start: Start) => Math.abs(minutesBetween(centre, start.minute));
  for (const start of starts) {
    const other = nearest.get(start.day);
    if (other === undefined || away(start) < away(other)) nearest.set(start.day, start);
  }
  return [...nearest.values()];
}

function middleMinute(starts: readonly Start[]): Minutes {
  const first = starts[0]!.minute;
  const away = starts.map((start) => minutesBetween(first, start.minute)).sort((a, b) => a - b);
  const middle = away[Math.floor((away.length - 1) / 2)]!;
  return (first + middle + minutesADay) % minutesADay;
}
