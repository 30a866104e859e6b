import { median } from '../maths/median.ts';
import type { Calendar, Grid, LocalDay } from '../model/grid.ts';
import { dayAt, samplesIn, stepMinutes } from '../model/grid.ts';
import type { Record } from '../model/record.ts';
import type { Kelvin, Minutes } from '../units/quantities.ts';
import { BinnedValues } from './binned-values.ts';
import type { ClockWindows } from './clock-windows.ts';
import { atNight, byDay, type SettledWindows, settled } from './settled-windows.ts';
import type { DefrostWindow, ProbeDays, ProbeDefrost } from './types.ts';

/** A figure of a day needs this share of the window's settled samples, and at least this long of them. */
const leastShare = 0.6;
const leastDayMinutes: Minutes = 180;
const leastNightMinutes: Minutes = 60;
/** Bins for values whose logging step is not known. */
const finestBin: Kelvin = 0.02;

/**
 * Daily figures of one probe in settled air.
 *
 * @param deviation room for one entry a sample, overwritten: the probes of a circuit share it
 */
export function probeDays(
  record: Record,
  windows: SettledWindows,
  defrosts: readonly DefrostWindow[],
  position: number,
  grid: Grid,
  calendar: Calendar,
  deviation: Float64Array,
): ProbeDays {
  const { values } = record;
  const { flags } = windows;
  const bins = dayBins(binWidth(record.resolution));
  const { all, night, trading, swings } = bins;
  deviationFromHour(values, flags, samplesIn(grid, 30), deviation);
  const days = emptyDays(calendar.days.length);
  calendar.days.forEach((day, d) => {
    countDay(bins, values, flags, deviation, day, windows.clock[d]!);
    const expected = windows.days[d]!;
    days.coverage[d] = expected.all > 0 ? all.total / expected.all : Number.NaN;
    if (isEnough(night, expected.night, leastNightMinutes, grid)) days.night[d] = night.quantile(0.5);
    if (isEnough(trading, expected.day, leastNightMinutes, grid)) days.day[d] = trading.quantile(0.5);
    if (!isEnough(all, expected.all, leastDayMinutes, grid)) return;
    days.median[d] = all.quantile(0.5);
    days.p10[d] = all.quantile(0.1);
    days.p90[d] = all.quantile(0.9);
    days.swing[d] = swings.quantile(0.9) - swings.quantile(0.1);
  });
  addDefrosts(days, defrosts, position, calendar);
  return days;
}

interface DayBins {
  readonly all: BinnedValues;
  readonly night: BinnedValues;
  readonly trading: BinnedValues;
  readonly swings: BinnedValues;
}

/** An odd number of logging steps, so that no reading lies on the edge of a bin. */
function binWidth(resolution: Kelvin): Kelvin {
  if (!(resolution > 0)) return finestBin;
  const steps = Math.max(1, Math.ceil(finestBin / resolution - 1e-9));
  return resolution * (steps % 2 === 0 ? steps + 1 : steps);
}

function dayBins(width: Kelvin): DayBins {
  const air = () => new BinnedValues(width, -90, 90);
  return { all: air(), night: air(), trading: air(), swings: new BinnedValues(finestBin, -20, 20) };
}

function countDay(
  { all, night, trading, swings }: DayBins,
  values: Float64Array,
  flags: Uint8Array,
  deviation: Float64Array,
  { from, to }: LocalDay,
  clock: ClockWindows,
): void {
  for (const one of [all, night, trading, swings]) one.clear();
  night.addFlagged(values, flags, settled | atNight, clock.night.from, clock.night.to);
  trading.addFlagged(values, flags, settled | byDay, clock.trading.from, clock.trading.to);
  all.addFlagged(values, flags, settled, from, to);
  all.addAll(night);
  all.addAll(trading);
  swings.addKnown(deviation, from, to);
}

function isEnough(bins: BinnedValues, expected: number, minutes: Minutes, grid: Grid): boolean {
  return bins.total >= leastShare * expected && bins.total * stepMinutes(grid) >= minutes;
}

/**
 * Each settled value less the mean of the settled values within `reach` samples either side, NaN where fewer than half of
 * those are known. Overwrites `deviation`, one entry a sample.
 */
function deviationFromHour(
  values: Float64Array,
  flags: Uint8Array,
  reach: number,
  deviation: Float64Array,
): void {
  const count = values.length;
  let sum = 0;
  let known = 0;
  let share = 0;
  for (let i = -reach; i < count; i++) {
    const before = known;
    const entering = i + reach;
    if (entering < count && flags[entering] !== 0 && !Number.isNaN(values[entering]!)) {
      sum += values[entering]!;
      known++;
    }
    const leaving = i - reach - 1;
    if (leaving >= 0 && flags[leaving] !== 0 && !Number.isNaN(values[leaving]!)) {
      sum -= values[leaving]!;
      known--;
    }
    if (known !== before) share = 1 / known;
    if (i >= 0) deviation[i] = known > reach && flags[i] !== 0 ? values[i]! - sum * share : Number.NaN;
  }
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
