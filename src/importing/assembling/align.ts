import type { Grid } from '../../model/grid.ts';
import type { Point } from '../points/point.ts';

/** A sampled reading stands until the next one, at most so many of its usual intervals (domain practice: 2). */
export const holdIntervals = 2;

/**
 * One value a grid sample: the last reading at or before it, NaN where that is `holdMs` old or more.
 *
 * Rows that already stand on the grid are filled in place and handed on as a view, without a copy: the point's
 * own array is changed.
 */
export function alignSampled(point: Point, grid: Grid, holdMs: number, onGrid: boolean): Float64Array {
  const { times, values } = point;
  if (onGrid) return alignInPlace(point, grid, holdMs);
  const aligned = new Float64Array(grid.count);
  let row = 0;
  let heldValue = Number.NaN;
  let heldTime = Number.NEGATIVE_INFINITY;
  for (let sample = 0; sample < grid.count; sample++) {
    const now = grid.startMs + sample * grid.stepMs;
    while (row < times.length && times[row]! <= now) {
      if (!Number.isNaN(values[row]!)) {
        heldValue = values[row]!;
        heldTime = times[row]!;
      }
      row++;
    }
    aligned[sample] = now - heldTime < holdMs ? heldValue : Number.NaN;
  }
  return aligned;
}

function alignInPlace({ times, values }: Point, grid: Grid, holdMs: number): Float64Array {
  const holdSamples = Math.ceil(holdMs / grid.stepMs) - 1;
  for (let gap = gapFrom(values, readingFrom(values, 0)); gap < values.length; ) {
    const end = readingFrom(values, gap);
    values.fill(values[gap - 1]!, gap, Math.min(end, gap + holdSamples));
    gap = gapFrom(values, end);
  }
  const from = Math.round((grid.startMs - times[0]!) / grid.stepMs);
  return values.subarray(from, from + grid.count);
}

/** First place from `at` on that holds nothing; the length where all are readings. */
function gapFrom(values: Float64Array, at: number): number {
  while (at < values.length && !Number.isNaN(values[at]!)) at++;
  return at;
}

function readingFrom(values: Float64Array, at: number): number {
  while (at < values.length && Number.isNaN(values[at]!)) at++;
  return at;
}

/** Whether rows stand exactly on the grid, one a sample, and cover it whole. */
export function standsOnGrid(times: Float64Array, grid: Grid): boolean {
  const from = (grid.startMs - times[0]!) / grid.stepMs;
  if (!Number.isInteger(from) || from < 0 || from + grid.count > times.length) return false;
  const first = times[0]!;
  for (let index = 0; index < times.length; index++) {
    if (times[index] !== first + index * grid.stepMs) return false;
  }
  return true;
}

/**
 * The state or value in force at each sample: the last change at or before it, NaN where nothing was logged. A
 * cell without a value is no change, unless its whole row is empty (`unknownRows`): then nothing is known from
 * there on.
 */
export function alignChanges(
  { times, values }: Point,
  grid: Grid,
  silent: Uint8Array,
  unknownRows: Uint8Array,
): Float64Array {
  const aligned = new Float64Array(grid.count);
  let row = 0;
  let inForce = Number.NaN;
  for (let sample = 0; sample < grid.count; sample++) {
    const now = grid.startMs + sample * grid.stepMs;
    for (; row < times.length && times[row]! <= now; row++) {
      if (unknownRows[row] === 1 || !Number.isNaN(values[row]!)) inForce = values[row]!;
    }
    aligned[sample] = silent[sample] === 1 ? Number.NaN : inForce;
  }
  return aligned;
}
