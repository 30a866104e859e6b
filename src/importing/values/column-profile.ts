/** What one pass over a column's numbers shows. State marks are counted apart, missing ones left out. */
export interface ColumnProfile {
  /** Readings that are numbers, and those that are marks of states. */
  readonly numbers: number;
  readonly marks: number;
  readonly zeros: number;
  readonly ones: number;
  readonly min: number;
  readonly minCount: number;
  /** Next number above the smallest; +Infinity where there is none. */
  readonly aboveMin: number;
  readonly max: number;
  readonly maxCount: number;
  readonly belowMax: number;
  /** Readings that repeat the one before. */
  readonly repeats: number;
}

export function columnProfile(values: Float64Array): ColumnProfile {
  let numbers = 0;
  let marks = 0;
  let zeros = 0;
  let ones = 0;
  let min = Number.POSITIVE_INFINITY;
  let minCount = 0;
  let aboveMin = Number.POSITIVE_INFINITY;
  let max = Number.NEGATIVE_INFINITY;
  let maxCount = 0;
  let belowMax = Number.NEGATIVE_INFINITY;
  let repeats = 0;
  let before = Number.NaN;
  for (let at = 0; at < values.length; at++) {
    const value = values[at]!;
    if (Number.isNaN(value)) continue;
    if (value === before) repeats++;
    before = value;
    if (value === 0) zeros++;
    else if (value === 1) ones++;
    if (value > aboveMin && value < belowMax) {
      numbers++;
      continue;
    }
    if (value >= Number.MAX_VALUE || value <= -Number.MAX_VALUE) {
      marks++;
      continue;
    }
    numbers++;
    if (value < min) {
      aboveMin = min;
      min = value;
      minCount = 1;
    } else if (value === min) minCount++;
    else if (value < aboveMin) aboveMin = value;
    if (value > max) {
      belowMax = max;
      max = value;
      maxCount = 1;
    } else if (value === max) maxCount++;
    else if (value > belowMax) belowMax = value;
  }
  return { numbers, marks, zeros, ones, min, minCount, aboveMin, max, maxCount, belowMax, repeats };
}
