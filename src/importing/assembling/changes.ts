import type { Grid } from '../../model/grid.ts';
import type { Changes } from '../../model/record.ts';
import type { EpochMs } from '../../units/quantities.ts';
import { lowerBound } from '../points/file-families.ts';
import type { Point } from '../points/point.ts';

/** 1 at each row of a change-of-value table in which no column holds a value. */
export function emptyRows(times: Float64Array, points: readonly Point[]): Uint8Array {
  const empty = new Uint8Array(times.length).fill(1);
  for (const point of points) {
    if (point.times !== times) continue;
    for (let row = 0; row < empty.length; row++) if (!Number.isNaN(point.values[row]!)) empty[row] = 0;
  }
  return empty;
}

/**
 * The changes from the one in force at the first sample to the end of the grid. NaN where nothing is known from
 * there on: at an empty row, and where the whole export falls silent, after which the old state is taken up again.
 */
export function changesWithin(
  point: Point,
  grid: Grid,
  unknownRows: Uint8Array,
  silent: Uint8Array,
): Changes {
  const { times, values } = point;
  const end = lowerBound(times, grid.startMs + (grid.count - 1) * grid.stepMs + 1);
  const stretches = silentStretches(silent, grid);
  let changes: Change[] = [];
  for (let row = 0; row < end; row++) {
    if (Number.isNaN(values[row]!) && unknownRows[row] === 0) continue;
    while (stretches.length > 0 && stretches[0]!.fromMs < times[row]!) {
      interrupt(changes, stretches.shift()!, times[row]!);
    }
    if (times[row]! <= grid.startMs) changes = [];
    changes.push({ time: times[row]!, value: values[row]! });
  }
  for (const stretch of stretches) interrupt(changes, stretch, Number.POSITIVE_INFINITY);
  return {
    times: Float64Array.from(changes, ({ time }) => time),
    values: Float64Array.from(changes, ({ value }) => value),
  };
}

interface Change {
  readonly time: EpochMs;
  readonly value: number;
}

interface Stretch {
  readonly fromMs: EpochMs;
  /** Infinity where the log ends in silence. */
  readonly toMs: EpochMs;
}

function interrupt(changes: Change[], { fromMs, toMs }: Stretch, nextMs: EpochMs): void {
  const inForce = changes.at(-1)?.value;
  if (inForce === undefined) return;
  changes.push({ time: fromMs, value: Number.NaN });
  if (toMs < nextMs) changes.push({ time: toMs, value: inForce });
}

function silentStretches(silent: Uint8Array, grid: Grid): Stretch[] {
  const stretches: Stretch[] = [];
  for (let sample = silent.indexOf(1); sample >= 0; ) {
    const after = silent.indexOf(0, sample);
    const toMs = after < 0 ? Number.POSITIVE_INFINITY : grid.startMs + after * grid.stepMs;
    stretches.push({ fromMs: grid.startMs + sample * grid.stepMs, toMs });
    sample = after < 0 ? -1 : silent.indexOf(1, after);
  }
  return stretches;
}
