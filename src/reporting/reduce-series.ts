import type { Grid } from '../model/grid.ts';
import { timeAt } from '../model/grid.ts';

/** A line ready to be drawn: times ascend, a null breaks the line. */
export interface ReducedSeries {
  /** Milliseconds since 1970-01-01T00:00:00Z. */
  readonly times: readonly number[];
  readonly values: readonly (number | null)[];
}

/** Half-open range of grid samples. */
export interface SampleRange {
  readonly from: number;
  readonly to: number;
}

/** Column `c` of `columns` equal ones over `range`. */
export function columnRange(range: SampleRange, columns: number, column: number): SampleRange {
  const samples = range.to - range.from;
  return {
    from: range.from + Math.floor((column * samples) / columns),
    to: range.from + Math.floor(((column + 1) * samples) / columns),
  };
}

/**
 * The lowest and the highest value of every pixel column, in the order they came, so that no peak is lost
 * and no more is drawn than the screen can show. A column without any value breaks the line. Series of at
 * most two samples a pixel are returned whole.
 */
export function reduceSeries(
  values: Float64Array,
  grid: Grid,
  range: SampleRange,
  pixels: number,
  convert: (value: number) => number,
): ReducedSeries {
  const times: number[] = [];
  const reduced: (number | null)[] = [];
  const put = (index: number): void => {
    times.push(timeAt(grid, index));
    reduced.push(convert(values[index]!));
  };
  const putGap = (index: number): void => {
    if (reduced.length === 0 || reduced.at(-1) === null) return;
    times.push(timeAt(grid, index));
    reduced.push(null);
  };

  const samples = range.to - range.from;
  const columns = samples <= 2 * pixels ? samples : Math.max(1, Math.floor(pixels));
  for (let column = 0; column < columns; column++) {
    const { from, to } = columnRange(range, columns, column);
    let lowest = -1;
    let highest = -1;
    for (let i = from; i < to; i++) {
      const value = values[i]!;
      if (Number.isNaN(value)) continue;
      if (lowest < 0 || value < values[lowest]!) lowest = i;
      if (highest < 0 || value > values[highest]!) highest = i;
    }
    if (lowest < 0) putGap(from);
    else if (lowest === highest) put(lowest);
    else {
      put(Math.min(lowest, highest));
      put(Math.max(lowest, highest));
    }
  }
  if (reduced.at(-1) === null) {
    times.pop();
    reduced.pop();
  }
  return { times, values: reduced };
}
