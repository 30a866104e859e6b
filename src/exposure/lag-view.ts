import type { Grid } from '../model/grid.ts';
import { samplesIn, stepMinutes } from '../model/grid.ts';
import type { Celsius, Minutes } from '../units/quantities.ts';
import type { SampleRange } from './exposure.ts';
import { lagSettleFactor, lagStartMinutes, longestLagGapMinutes } from './settings.ts';

/** What a body that follows the air with one time constant would have shown. It is a picture, no measurement. */
export interface LagView {
  readonly timeConstantMinutes: Minutes;
  /** Counted after the start-up; 0 where no stretch was long enough. */
  readonly countedMinutes: Minutes;
  readonly aboveMinutes: Minutes;
  readonly kelvinHours: number;
  /** Highest level after the start-up, NaN where nothing was counted. */
  readonly peak: Celsius;
}

/**
 * y = y + (1 − e^(−Δt/τ)) · (x − y), started at the mean of the first hour, its first 3τ left out; started anew
 * after a gap. One time constant an entry, in one pass over the samples.
 */
export function lagViews(
  values: Float64Array,
  limit: Celsius,
  timeConstants: readonly Minutes[],
  grid: Grid,
  range: SampleRange = { from: 0, to: grid.count },
): LagView[] {
  const step = stepMinutes(grid);
  const longestGap = samplesIn(grid, longestLagGapMinutes);
  const lags = timeConstants.map((minutes) => ({
    weight: -Math.expm1(-step / minutes),
    settle: samplesIn(grid, lagSettleFactor * minutes),
    level: Number.NaN,
    startedAt: 0,
    counted: 0,
    above: 0,
    kelvins: 0,
    peak: Number.NaN,
  }));
  let lastKnown = Number.NEGATIVE_INFINITY;
  for (let i = range.from; i < range.to; i++) {
    const value = values[i]!;
    if (Number.isNaN(value)) continue;
    if (i - lastKnown > longestGap) {
      const start = meanOf(values, i, Math.min(range.to, i + samplesIn(grid, lagStartMinutes)));
      for (const lag of lags) {
        lag.level = start;
        lag.startedAt = i;
      }
    }
    lastKnown = i;
    for (const lag of lags) {
      lag.level += lag.weight * (value - lag.level);
      if (i - lag.startedAt < lag.settle) continue;
      lag.counted++;
      if (!(lag.level <= lag.peak)) lag.peak = lag.level;
      if (lag.level <= limit) continue;
      lag.above++;
      lag.kelvins += lag.level - limit;
    }
  }
  return lags.map((lag, k) => ({
    timeConstantMinutes: timeConstants[k]!,
    countedMinutes: lag.counted * step,
    aboveMinutes: lag.above * step,
    kelvinHours: (lag.kelvins * step) / 60,
    peak: lag.peak,
  }));
}

function meanOf(values: Float64Array, from: number, to: number): number {
  let sum = 0;
  let known = 0;
  for (let i = from; i < to; i++) {
    if (Number.isNaN(values[i]!)) continue;
    sum += values[i]!;
    known++;
  }
  return sum / known;
}
