import { quantile } from '../../maths/quantile.ts';
import type { Calendar, Grid } from '../../model/grid.ts';
import { dayAt, minuteOfDay, samplesIn } from '../../model/grid.ts';
import { minutesADay, minutesBetween, sampleAtMinute } from '../local-minutes.ts';
import { recurringSlots } from './slots.ts';
import type { Stretch } from './stretch.ts';

/** Most of a slot's climbs begin by then; the rest began late and keep their own start. */
const clockShare = 0.85;
/** How far a valve may be from what the air shows and still be the same event. */
const valveReachMinutes = 25;

/**
 * Starts moved to the clock. A climb often seems to begin early, because the valve had just shut by itself when the
 * defrost came; the schedule is where the starts of one time of day pile up at their late end.
 */
export function startsOnTheClock(stretches: readonly Stretch[], grid: Grid, calendar: Calendar): Stretch[] {
  const clockOf = new Map<number, number>();
  for (const slot of recurringSlots(
    stretches.map((stretch) => stretch.from),
    grid,
    calendar,
  )) {
    const away = slot.starts.map((start) => minutesBetween(slot.minute, minuteOfDay(grid, calendar, start)));
    const clock = (slot.minute + Math.round(quantile(away, clockShare)) + minutesADay) % minutesADay;
    for (const start of slot.starts) clockOf.set(start, clock);
  }
  return stretches.map(({ from, to }) => {
    const clock = clockOf.get(from);
    const day = calendar.days[dayAt(calendar, from)]!;
    const start = clock === undefined ? null : sampleAtMinute(grid, calendar, day, clock);
    return { from: start !== null && start > from && start < to - 1 ? start : from, to };
  });
}

/**
 * Where the valve is logged: a defrost lies in the stretch for which it stays shut. It ends when the valve opens again,
 * which the air shows some minutes later, and begins no earlier than it shut.
 */
export function boundByValve(
  stretches: readonly Stretch[],
  valve: Float64Array,
  threshold: number,
  grid: Grid,
): Stretch[] {
  const reach = samplesIn(grid, valveReachMinutes);
  return stretches.map((stretch) => {
    const shut = longestShut(stretch, valve, threshold, reach);
    if (2 * overlap(shut, stretch) < stretch.to - stretch.from) return stretch;
    const from = Math.max(shut.from, stretch.from);
    return { from, to: Math.abs(shut.to - stretch.to) <= reach ? shut.to : stretch.to };
  });
}

/** The stretch of the shut valve that covers most of `around`, followed `reach` samples beyond it. */
function longestShut(around: Stretch, valve: Float64Array, threshold: number, reach: number): Stretch {
  let longest = { from: around.from, to: around.from };
  let from = Math.max(0, around.from - 1);
  const last = Math.min(valve.length, around.to + reach);
  for (let i = from; i <= last; i++) {
    const isShut = i < last && valve[i]! <= threshold;
    if (isShut) continue;
    if (overlap({ from, to: i }, around) > overlap(longest, around)) longest = { from, to: i };
    from = i + 1;
  }
  return longest;
}

function overlap(one: Stretch, other: Stretch): number {
  return Math.max(0, Math.min(one.to, other.to) - Math.max(one.from, other.from));
}
