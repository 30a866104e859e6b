import type { Grid } from '../../model/grid.ts';
import type { Changes } from '../../model/record.ts';
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

/** The changes from the one in force at the first sample to the end of the grid; NaN where nothing is known on. */
export function changesWithin({ times, values }: Point, grid: Grid, unknownRows: Uint8Array): Changes {
  const end = lowerBound(times, grid.startMs + (grid.count - 1) * grid.stepMs + 1);
  const kept: number[] = [];
  for (let row = 0; row < end; row++) {
    if (Number.isNaN(values[row]!) && unknownRows[row] === 0) continue;
    if (times[row]! <= grid.startMs) kept.length = 0;
    kept.push(row);
  }
  return {
    times: Float64Array.from(kept, (row) => times[row]!),
    values: Float64Array.from(kept, (row) => values[row]!),
  };
}
