import { flaggedMedian } from '../../maths/flagged-median.ts';
import { median } from '../../maths/median.ts';
import type { Grid } from '../../model/grid.ts';
import { samplesIn, stepMinutes } from '../../model/grid.ts';
import type { Celsius, Kelvin, Minutes } from '../../units/quantities.ts';
import type { ProbeDefrost } from '../types.ts';
import { Phase } from '../types.ts';
import { meanOver } from './lift.ts';
import type { Stretch } from './stretch.ts';

/** Beyond half the dead band above the level before: 1 °F. */
const recoveryMargin: Kelvin = 0.6;
/**
 * A probe that stood higher than this above its usual level before a defrost had not recovered from the last; one that stands
 * higher for good never reads as recovered, whatever lifts it.
 */
export const raisedLevel: Kelvin = 0.5;
const meltingBand: Kelvin = 0.6;
const lateMinutes: Minutes = 20;
/** A gap longer than this ends the watch for recovery. */
const longestGap: Minutes = 15;

/**
 * How one probe went through the defrost `window`. Recovery is watched until `until`, the next defrost or the end,
 * down to the level before, held between `usual` and `usual` + 0.5 K.
 */
export function measureProbe(
  values: Float64Array,
  phase: Uint8Array,
  window: Stretch,
  until: number,
  usual: Celsius,
  differential: Kelvin,
  grid: Grid,
): ProbeDefrost {
  const before = levelBefore(values, phase, window.from, grid);
  const wanted = Number.isNaN(usual) ? before : Math.max(usual, Math.min(before, usual + raisedLevel));
  const { recoveryMinutes, watchedMinutes } = recovery(
    values,
    window.to,
    until,
    wanted + differential / 2 + recoveryMargin,
    grid,
  );
  return {
    before,
    peak: peakOf(values, window.from, Math.min(until, window.to + samplesIn(grid, 10))),
    late: lateLevel(values, window, grid),
    riseRate: fastestRise(values, window, grid),
    plateauMinutes: minutesNearMelting(values, window, grid),
    recoveryMinutes,
    watchedMinutes,
  };
}

function levelBefore(values: Float64Array, phase: Uint8Array, start: number, grid: Grid): number {
  const from = Math.max(0, start - samplesIn(grid, 60));
  const level = flaggedMedian(values, phase, Phase.cooling, from, start);
  return Number.isNaN(level)
    ? median(values.subarray(Math.max(0, start - samplesIn(grid, 30)), start))
    : level;
}

function peakOf(values: Float64Array, from: number, to: number): number {
  let peak = Number.NaN;
  for (let i = from; i < to; i++) if (!(values[i]! <= peak) && !Number.isNaN(values[i]!)) peak = values[i]!;
  return peak;
}

function lateLevel(values: Float64Array, { from, to }: Stretch, grid: Grid): number {
  const late = Math.min(samplesIn(grid, lateMinutes), Math.ceil((to - from) / 2));
  return median(values.subarray(to - late, to));
}

function fastestRise(values: Float64Array, { from, to }: Stretch, grid: Grid): number {
  const span = samplesIn(grid, 5);
  let fastest = Number.NaN;
  for (let i = from; i + span < Math.min(values.length, to + 1); i++) {
    const rate = (values[i + span]! - values[i]!) / (span * stepMinutes(grid));
    if (!(rate <= fastest) && !Number.isNaN(rate)) fastest = rate;
  }
  return fastest;
}

function minutesNearMelting(values: Float64Array, { from, to }: Stretch, grid: Grid): Minutes {
  let near = 0;
  for (let i = from; i < to; i++) if (Math.abs(values[i]!) <= meltingBand) near++;
  return near * stepMinutes(grid);
}

/** The mean of the last ten minutes (since the end of the defrost, if that is nearer) is followed down to `level`. */
function recovery(values: Float64Array, end: number, until: number, level: number, grid: Grid) {
  const span = samplesIn(grid, 10);
  const longest = Math.max(2, samplesIn(grid, longestGap));
  let known = end - 1;
  for (let i = end; i < until; i++) {
    if (Number.isNaN(values[i]!)) {
      if (i - known > longest)
        return { recoveryMinutes: null, watchedMinutes: minutesFrom(end, known, grid) };
      continue;
    }
    known = i;
    if (values[i]! > level) continue;
    if (meanOver(values, Math.max(end, i - span + 1), i + 1) <= level) {
      return { recoveryMinutes: minutesFrom(end, i, grid), watchedMinutes: minutesFrom(end, i, grid) };
    }
  }
  return { recoveryMinutes: null, watchedMinutes: minutesFrom(end, until, grid) };
}

function minutesFrom(end: number, index: number, grid: Grid): Minutes {
  return Math.max(0, index - end) * stepMinutes(grid);
}
