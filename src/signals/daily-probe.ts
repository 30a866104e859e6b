import { median } from '../maths/median.ts';
import type { Calendar, Grid } from '../model/grid.ts';
import { dayAt, stepMinutes } from '../model/grid.ts';
import type { Record } from '../model/record.ts';
import type { Kelvin, Minutes } from '../units/quantities.ts';
import { BinnedValues } from './binned-values.ts';
import { dailySwings } from './daily-swing.ts';
import type { SettledDay, SettledPart, SettledWindows } from './settled-windows.ts';
import type { DefrostWindow, ProbeDays } from './types.ts';

/** A figure of a day needs this share of the window's settled samples, and at least this long of them. */
const leastShare = 0.6;
const leastDayMinutes: Minutes = 180;
const leastNightMinutes: Minutes = 60;
/** Bins for values whose logging step is not known. */
const finestBin: Kelvin = 0.02;

/**
 * Daily figures of one probe in settled air; its swing is worked out when it is first asked for.
 *
 * @param defrosts the complete ones of each day
 */
export function probeDays(
  record: Record,
  windows: SettledWindows,
  defrosts: readonly (readonly DefrostWindow[])[],
  position: number,
  grid: Grid,
  calendar: Calendar,
): ProbeDays {
  const { values } = record;
  const bins = dayBins(binWidth(record.resolution));
  const { all, night, trading } = bins;
  const days = emptyDays(calendar.days.length);
  windows.days.forEach((day, d) => {
    countDay(bins, values, day);
    const expected = day.night.samples + day.trading.samples + day.rest.samples;
    days.coverage[d] = expected > 0 ? all.total / expected : Number.NaN;
    if (isEnough(night, day.night.samples, leastNightMinutes, grid)) days.night[d] = night.quantile(0.5);
    if (isEnough(trading, day.trading.samples, leastNightMinutes, grid)) days.day[d] = trading.quantile(0.5);
    if (!isEnough(all, expected, leastDayMinutes, grid)) return;
    days.median[d] = all.quantile(0.5);
    days.p10[d] = all.quantile(0.1);
    days.p90[d] = all.quantile(0.9);
  });
  addDefrosts(days, defrosts, position);
  return withSwing(days, swingsOf(record, windows, days.median, grid, calendar));
}

/** Made apart from `probeDays`, so that the bins of a probe do not live as long as its days. */
function swingsOf(
  { values }: Record,
  { flags }: SettledWindows,
  level: Float64Array,
  grid: Grid,
  calendar: Calendar,
): () => Float64Array {
  return () => dailySwings(values, flags, level, grid, calendar);
}

function withSwing(days: Omit<ProbeDays, 'swing'>, make: () => Float64Array): ProbeDays {
  let swing: Float64Array | null = null;
  return {
    ...days,
    get swing() {
      swing ??= make();
      return swing;
    },
  };
}

interface DayBins {
  readonly all: BinnedValues;
  readonly night: BinnedValues;
  readonly trading: BinnedValues;
}

/** An odd number of logging steps, so that no reading lies on the edge of a bin. */
function binWidth(resolution: Kelvin): Kelvin {
  if (!(resolution > 0)) return finestBin;
  const steps = Math.max(1, Math.ceil(finestBin / resolution - 1e-9));
  return resolution * (steps % 2 === 0 ? steps + 1 : steps);
}

function dayBins(width: Kelvin): DayBins {
  const air = () => new BinnedValues(width, -90, 90);
  return { all: air(), night: air(), trading: air() };
}

function countDay({ all, night, trading }: DayBins, values: Float64Array, day: SettledDay): void {
  for (const one of [all, night, trading]) one.clear();
  countPart(night, values, day.night);
  countPart(trading, values, day.trading);
  countPart(all, values, day.rest);
  all.addAll(night);
  all.addAll(trading);
}

function countPart(bins: BinnedValues, values: Float64Array, { stretches }: SettledPart): void {
  for (const { from, to } of stretches) bins.addKnown(values, from, to);
}

function isEnough(bins: BinnedValues, expected: number, minutes: Minutes, grid: Grid): boolean {
  return bins.total >= leastShare * expected && bins.total * stepMinutes(grid) >= minutes;
}

function emptyDays(count: number): Omit<ProbeDays, 'swing'> {
  const unknown = () => new Float64Array(count).fill(Number.NaN);
  return {
    median: unknown(),
    night: unknown(),
    day: unknown(),
    p10: unknown(),
    p90: unknown(),
    lateDefrost: unknown(),
    peak: unknown(),
    recovery: unknown(),
    coverage: unknown(),
  };
}

function addDefrosts(
  days: Pick<ProbeDays, 'lateDefrost' | 'peak' | 'recovery'>,
  defrosts: readonly (readonly DefrostWindow[])[],
  position: number,
) {
  for (let day = 0; day < defrosts.length; day++) {
    if (defrosts[day]!.length === 0) continue;
    const list = defrosts[day]!.map((window) => window.probes[position]!);
    days.lateDefrost[day] = median(list.map((defrost) => defrost.late));
    days.peak[day] = median(list.map((defrost) => defrost.peak));
    days.recovery[day] = median(list.map((defrost) => defrost.recoveryMinutes ?? defrost.watchedMinutes));
  }
}

/** The complete ones of `defrosts` by the day on which they began. */
export function completeByDay(defrosts: readonly DefrostWindow[], calendar: Calendar): DefrostWindow[][] {
  const byDay = calendar.days.map((): DefrostWindow[] => []);
  for (const window of defrosts) if (window.complete) byDay[dayAt(calendar, window.from)]!.push(window);
  return byDay;
}
