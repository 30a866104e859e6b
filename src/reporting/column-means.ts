import type { Grid } from '../model/grid.ts';
import { timeAt } from '../model/grid.ts';
import { columnRange, type SampleRange } from './reduce-series.ts';

/** Mean and range of each of `columns` equal columns, at their middle times; nulls where nothing is known. */
export interface ColumnMeans {
  readonly times: readonly number[];
  readonly low: readonly (number | null)[];
  readonly mean: readonly (number | null)[];
  readonly high: readonly (number | null)[];
}

export function columnMeans(
  values: Float64Array,
  grid: Grid,
  range: SampleRange,
  columns: number,
  convert: (value: number) => number,
): ColumnMeans {
  const times: number[] = [];
  const low: (number | null)[] = [];
  const mean: (number | null)[] = [];
  const high: (number | null)[] = [];
  const count = Math.max(1, Math.min(range.to - range.from, Math.floor(columns)));
  for (let column = 0; column < count; column++) {
    const { from, to } = columnRange(range, count, column);
    let lowest = Number.POSITIVE_INFINITY;
    let highest = Number.NEGATIVE_INFINITY;
    let sum = 0;
    let known = 0;
    for (let i = from; i < to; i++) {
      const value = values[i]!;
      if (Number.isNaN(value)) continue;
      lowest = Math.min(lowest, value);
      highest = Math.max(highest, value);
      sum += value;
      known++;
    }
    times.push(timeAt(grid, (from + to - 1) / 2));
    low.push(known === 0 ? null : convert(lowest));
    mean.push(known === 0 ? null : convert(sum / known));
    high.push(known === 0 ? null : convert(highest));
  }
  return { times, low, mean, high };
}
