import { median } from '../maths/median.ts';
import { quantile } from '../maths/quantile.ts';
import type { Calendar, Grid, LocalDay } from '../model/grid.ts';
import { dayAt, samplesIn } from '../model/grid.ts';
import type { DefrostPlan } from '../model/log.ts';
import type { Minutes } from '../units/quantities.ts';
import { liftIn } from './defrost/lift.ts';
import type { Slot } from './defrost/slots.ts';
import { recurringSlots, slotToleranceMinutes } from './defrost/slots.ts';
import { sampleAtMinute } from './local-minutes.ts';
import { slotsInForce } from './slots-in-force.ts';
import type { DefrostSlot, DefrostWindow } from './types.ts';
import { Phase } from './types.ts';

/** A defrost is called missed only where this share of the air and status around it is known. */
const leastCoverage = 0.9;
/** The air was lifted in the slot by this share of the usual lift: the defrost came and only its status did not. */
const cameShare = 0.5;
/** … where that is at least this, in K: defrosts that hardly warm the air cannot be told from it. */
const plainLift = 0.8;

/** Defrosts that only the air shows, in so few readings, may now and then be over between two of them … */
const halfSeenSamples = 2;
/** … but hardly on so many days in a row. */
const hiddenRun = 3;

/** Where this share of them lift the air by less than what shows that one came, one that came may not be seen … */
const faintQuantile = 0.1;
/** … but is, once within so many days. */
const faintRun = 7;

/** A defrost this near to its slot came; on the day on which the clocks change it may be an hour off. */
const reachMinutes: Minutes = slotToleranceMinutes + 10;

/**
 * The times of day at which the circuit defrosts, and the days on which one was due, with the record complete,
 * and did not come. On a day with as many defrosts as were due none is missed: it was moved.
 *
 * @param isShut whether the valve stood shut through a stretch, which by itself is a defrost; null where that is not so
 */
export function defrostSlots(
  plan: DefrostPlan,
  defrosts: readonly DefrostWindow[],
  air: Float64Array,
  phase: Uint8Array,
  grid: Grid,
  calendar: Calendar,
  isShut: ((from: number, to: number) => boolean) | null,
): DefrostSlot[] {
  const starts = defrosts.map((window) => window.from);
  const found = recurringSlots(starts, grid, calendar);
  const planned = (plan.starts ?? []).map((minute): Slot => ({ minute, starts: [] }));
  const slots = found.length > 0 ? found : planned;
  const isInForce = slotsInForce(slots, calendar);
  const seenByDay = new Int32Array(calendar.days.length);
  for (const start of starts) seenByDay[dayAt(calendar, start)]!++;
  const length =
    Math.round(median(defrosts.map((w) => w.to - w.from))) || samplesIn(grid, plan.minutes ?? 30);
  const lifts = defrosts.map((window) => liftIn(air, window, grid));
  const lift = median(lifts);
  const isByShape = defrosts.filter(({ source }) => source === 'shape').length > defrosts.length / 2;
  // The air of a case that is short of cooling makes shapes of its own: what was planned is enough for a day.
  const most = isByShape ? (plan.perDay ?? slots.length) : slots.length;
  const dueByDay = calendar.days.map((_, d) =>
    Math.min(most, slots.filter((_, slot) => isInForce(slot, d)).length),
  );
  const isFaint = quantile(lifts, faintQuantile) < cameShare * lift;
  const run = !isByShape ? 1 : isFaint ? faintRun : length <= halfSeenSamples ? hiddenRun : 1;
  return slots.map(({ minute }, slot) => {
    const expected: number[] = [];
    const missed: number[] = [];
    calendar.days.forEach((day, d) => {
      const due = isInForce(slot, d) ? sampleAtMinute(grid, calendar, day, minute) : null;
      if (due === null || !isWatched(due, length, air, phase, day, grid)) return;
      expected.push(due);
      const reach = samplesIn(grid, reachMinutes + 60 * Math.abs(day.hours - 24));
      if (seenByDay[d]! >= dueByDay[d]!) return;
      const came = defrosts.some((w) => w.from < due + reach && w.to > due - reach);
      const lifted = () =>
        lift >= plainLift && liftIn(air, { from: due, to: due + length }, grid) >= cameShare * lift;
      const rested = () => isShut?.(due, due + length) ?? false;
      if (!came && !lifted() && !rested()) missed.push(due);
    });
    const plain = inRuns(missed, expected, run);
    return {
      minute,
      expected: expected.length,
      seen: expected.length - plain.length,
      missed: plain,
      due: expected,
    };
  });
}

/** Those of `missed` that are at least `fewest` in a row of the ones that were due. */
function inRuns(missed: readonly number[], due: readonly number[], fewest: number): number[] {
  const isMissed = new Set(missed);
  const telling: number[] = [];
  let run: number[] = [];
  for (const sample of [...due, null]) {
    if (sample !== null && isMissed.has(sample)) run.push(sample);
    else {
      if (run.length >= fewest) telling.push(...run);
      run = [];
    }
  }
  return telling;
}

/** The air is known around the slot, and the circuit was not shut off. */
function isWatched(
  due: number,
  length: number,
  air: Float64Array,
  phase: Uint8Array,
  day: LocalDay,
  grid: Grid,
): boolean {
  const half = samplesIn(grid, 30);
  const from = due - half;
  const to = due + length + half;
  if (from < 0 || to > air.length || due >= day.to) return false;
  let known = 0;
  for (let i = from; i < to; i++) {
    if (phase[i] === Phase.off) return false;
    if (!Number.isNaN(air[i]!)) known++;
  }
  return known >= leastCoverage * (to - from);
}
