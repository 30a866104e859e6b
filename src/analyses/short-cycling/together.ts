import { median } from '../../maths/median.ts';
import type { Measure } from '../../model/evidence.ts';
import { type Calendar, samplesIn } from '../../model/grid.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { measure } from '../evidence-parts.ts';
import { settings } from './settings.ts';

const fewestNormDays = 3;
/** Where all stood still, what is left of the sums is the rounding of numbers. */
const leastChange = 1e-9;
/** Valves of a circuit that defrosts, or has just done so, open when that ends: so long after it they are left out. */
const afterDefrostMinutes = 90;

/**
 * Of each hour of the log, over pairs of circuits of one group, how much they went together and the most that this can be:
 * `common` / `most` is their mean correlation, 1 for those that are one. Within hours, so that day and night, which all share, do not count.
 */
export interface HoursTogether {
  /** Samples of an hour. */
  readonly hour: number;
  readonly common: Float64Array;
  readonly most: Float64Array;
}

export interface Step {
  /** Sample of the hour, and day, from which they go together to the end. */
  readonly onset: number;
  readonly day: number;
  /** Mean correlation since, and that of the first third of the days. */
  readonly now: number;
  readonly usual: number;
  /** Known days since. */
  readonly days: number;
}

/** From when to the end of the log they went together on every known day by `rise` more than at first; null when they did not. */
export function stepOf(hours: HoursTogether, rise: number, calendar: Calendar): Step | null {
  const days = Float64Array.from(calendar.days, (day) => correlationIn(hours, day.from, day.to));
  const norm = days.subarray(0, Math.max(fewestNormDays, Math.ceil(days.length / 3)));
  const usual = median(norm);
  const limit = Math.max(0, usual) + rise;
  let first = days.length;
  while (first > 0 && !(days[first - 1]! < limit)) first--;
  const since = days.subarray(first).filter((value) => !Number.isNaN(value));
  if (first < fewestNormDays || since.length < settings.busyDays.value) return null;
  const now = median(since);
  const { from } = calendar.days[first - 1]!;
  const { to } = calendar.days[first]!;
  const onset = partingHour((now + Math.max(0, usual)) / 2, hours, from, to);
  return { onset, day: first, now, usual, days: since.length };
}

/** Mean correlation over the whole hours within samples `from` to `to`; NaN where nothing is known of it. */
function correlationIn({ hour, common, most }: HoursTogether, from: number, to: number): number {
  let together = 0;
  let largest = 0;
  for (let k = Math.ceil(from / hour); (k + 1) * hour <= to && k < common.length; k++) {
    together += common[k]!;
    largest += most[k]!;
  }
  return largest > leastChange ? together / largest : Number.NaN;
}

/** The hour, in samples, that best parts those from `from` to `to` into one side below `level` and one above it. */
function partingHour(level: number, hours: HoursTogether, from: number, to: number): number {
  const { hour } = hours;
  let sum = 0;
  let most = 0;
  let at = from;
  for (let k = Math.ceil(from / hour); (k + 1) * hour <= to; k++) {
    const now = correlationIn(hours, k * hour, (k + 1) * hour);
    if (Number.isNaN(now)) continue;
    sum += level - now;
    if (sum > most) {
      most = sum;
      at = (k + 1) * hour;
    }
  }
  return at;
}

/** 1 in hours with a stop, or a defrost shortly before. */
export function hoursLeftOut(
  { defrosts, offSpells, log }: CircuitSignals,
  count: number,
  hour: number,
): Uint8Array {
  const leftOut = new Uint8Array(count);
  const after = samplesIn(log.grid, afterDefrostMinutes);
  const leaveOut = (from: number, to: number) =>
    leftOut.fill(1, Math.max(0, Math.floor(from / hour)), Math.ceil(to / hour));
  for (const { from, to } of defrosts) leaveOut(from, to + after);
  for (const { from, to } of offSpells) leaveOut(from, to + after);
  return leftOut;
}

/** More days, more certain. */
export function certaintyOf({ days }: Step): number {
  return 0.6 + Math.min(0.3, 0.06 * days);
}

export function measuresOf({ now, usual }: Step): Measure[] {
  return [measure('inStep', now, '1'), measure('usualInStep', usual, '1')];
}
