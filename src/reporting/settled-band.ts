import { median } from 'simple-statistics';
import { Phase } from '../signals/types.ts';
import { columnRange, type SampleRange } from './reduce-series.ts';

/** Settled air of one probe, a column at a time: nulls in defrost, in recovery and where nothing is known. */
export interface SettledBand {
  readonly low: readonly (number | null)[];
  readonly median: readonly (number | null)[];
  readonly high: readonly (number | null)[];
}

/**
 * Lowest, median and highest value of each of `columns` equal columns over `range`, of the samples at which
 * the circuit was cooling or shut off: defrosts and the recoveries after them are left out, so that weeks can be
 * read.
 */
export function settledBand(
  values: Float64Array,
  phase: Uint8Array,
  range: SampleRange,
  columns: number,
  convert: (value: number) => number,
): SettledBand {
  const low: (number | null)[] = [];
  const middle: (number | null)[] = [];
  const high: (number | null)[] = [];
  for (let column = 0; column < columns; column++) {
    const { from, to } = columnRange(range, columns, column);
    const settled: number[] = [];
    for (let i = from; i < to; i++) {
      if ((phase[i] === Phase.cooling || phase[i] === Phase.off) && !Number.isNaN(values[i]!))
        settled.push(convert(values[i]!));
    }
    if (settled.length === 0) {
      low.push(null);
      middle.push(null);
      high.push(null);
      continue;
    }
    low.push(settled.reduce((a, b) => Math.min(a, b)));
    middle.push(median(settled));
    high.push(settled.reduce((a, b) => Math.max(a, b)));
  }
  return { low, median: middle, high };
}
