import { median } from '../maths/median.ts';
import type { Calendar, Grid, LocalDay } from '../model/grid.ts';
import { dayAt, minuteOfDay, samplesIn, stepMinutes } from '../model/grid.ts';
import type { Record } from '../model/record.ts';
import type { Kelvin, Minutes } from '../units/quantities.ts';
import { BinnedValues } from './binned-values.ts';
import type { DefrostWindow, ProbeDays, ProbeDefrost } from './types.ts';
import { Phase } from './types.ts';

/** A figure of a day needs this share of the window's settled samples, and at least this long of them. */
const leastShare = 0.6;
const leastDayMinutes: Minutes = 180;
const leastNightMinutes: Minutes = 60;
/** Bins for values whose logging step is not known. */
const finestBin: Kelvin = 0.02;
const nightHours = [60, 300] as const;
const dayHours = [600, 1200] as const;

/** Daily figures of one probe in settled air, in one pass over its samples. */
export function probeDays(
  record: Record,
  phase: Uint8Array,
  defrosts: readonly DefrostWindow[],
  position: number,
  grid: Grid,
  calendar: Calendar,
): ProbeDays {
  const values = record.values;
  const width = Math.max(finestBin, record.resolution);
  const bins = { all: binsOf(width), night: binsOf(width), day: binsOf(width) };
  const swings = new BinnedValues(finestBin, -20, 20);
  const deviation = deviationFromHour(values, phase, samplesIn(grid, 30));
  const days: ProbeDays = emptyDays(calendar.days.length);
  calendar.days.forEach((day, d) => {
    for (const counter of [bins.all, bins.night, bins.day, swings]) counter.clear();
    const night = clockWindow(grid, calendar, day, nightHours);
    const daytime = clockWindow(grid, calendar, day, dayHours);
    const expected = { all: 0, night: 0, day: 0 };
    for (let i = day.from; i < day.to; i++) {
      if (phase[i] !== Phase.cooling && phase[i] !== Phase.unknown) continue;
      const inNight = i >= night.from && i < night.to;
      const inDay = i >= daytime.from && i < daytime.to;
      expected.all++;
      if (inNight) expected.night++;
      if (inDay) expected.day++;
      const value = values[i]!;
      if (Number.isNaN(value)) continue;
      bins.all.add(value);
      if (inNight) bins.night.add(value);
      if (inDay) bins.day.add(value);
      if (!Number.isNaN(deviation[i]!)) swings.add(deviation[i]!);
    }
    days.coverage[d] = expected.all > 0 ? bins.all.total / expected.all : Number.NaN;
    if (isEnough(bins.night, expected.night, leastNightMinutes, grid))
      days.night[d] = bins.night.quantile(0.5);
    if (isEnough(bins.day, expected.day, leastNightMinutes, grid)) days.day[d] = bins.day.quantile(0.5);
    if (!isEnough(bins.all, expected.all, leastDayMinutes, grid)) return;
    days.median[d] = bins.all.quantile(0.5);
    days.p10[d] = bins.all.quantile(0.1);
    days.p90[d] = bins.all.quantile(0.9);
    days.swing[d] = swings.quantile(0.9) - swings.quantile(0.1);
  });
  addDefrosts(days, defrosts, position, calendar);
  return days;
}

const binsOf = (width: number) => new BinnedValues(width, -90, 90);

function isEnough(bins: BinnedValues, expected: number, minutes: Minutes, grid: Grid): boolean {
  return bins.total >= leastShare * expected && bins.total * stepMinutes(grid) >= minutes;
}

/** The samples of `day` between two minutes of the local clock. */
function clockWindow(
  grid: Grid,
  calendar: Calendar,
  day: LocalDay,
  [opening, closing]: readonly [number, number],
) {
  let from = day.to;
  let to = day.from;
  const step = Math.max(1, samplesIn(grid, 5));
  for (let i = day.from; i < day.to; i += step) {
    const minute = minuteOfDay(grid, calendar, i);
    if (minute < opening || minute >= closing) continue;
    from = Math.min(from, i);
    to = Math.min(day.to, i + step);
  }
  return { from, to };
}

/** Each settled value less the mean of the settled values within `reach` samples either side. */
function deviationFromHour(values: Float64Array, phase: Uint8Array, reach: number): Float64Array {
  const count = values.length;
  const deviation = new Float64Array(count).fill(Number.NaN);
  let sum = 0;
  let known = 0;
  const counts = (i: number) => phase[i] === Phase.cooling && !Number.isNaN(values[i]!);
  for (let i = -reach; i < count; i++) {
    const entering = i + reach;
    const leaving = i - reach - 1;
    if (entering < count && counts(entering)) {
      sum += values[entering]!;
      known++;
    }
    if (leaving >= 0 && counts(leaving)) {
      sum -= values[leaving]!;
      known--;
    }
    if (i >= 0 && known > reach && counts(i)) deviation[i] = values[i]! - sum / known;
  }
  return deviation;
}

function emptyDays(count: number): ProbeDays {
  const unknown = () => new Float64Array(count).fill(Number.NaN);
  return {
    median: unknown(),
    night: unknown(),
    day: unknown(),
    p10: unknown(),
    p90: unknown(),
    swing: unknown(),
    lateDefrost: unknown(),
    peak: unknown(),
    recovery: unknown(),
    coverage: unknown(),
  };
}

function addDefrosts(
  days: ProbeDays,
  defrosts: readonly DefrostWindow[],
  position: number,
  calendar: Calendar,
) {
  const byDay = new Map<number, ProbeDefrost[]>();
  for (const window of defrosts) {
    if (!window.complete) continue;
    const day = dayAt(calendar, window.from);
    const list = byDay.get(day) ?? [];
    list.push(window.probes[position]!);
    byDay.set(day, list);
  }
  for (const [day, list] of byDay) {
    days.lateDefrost[day] = median(list.map((defrost) => defrost.late));
    days.peak[day] = median(list.map((defrost) => defrost.peak));
    days.recovery[day] = median(list.map((defrost) => defrost.recoveryMinutes ?? defrost.watchedMinutes));
  }
}
