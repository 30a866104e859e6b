/** What one pass over a column's numbers shows. Missing ones are left out. */
export interface ColumnProfile {
  readonly readings: number;
  readonly min: number;
  readonly max: number;
  /** Readings that repeat the one before. */
  readonly repeats: number;
  /** Largest step from one reading to the next, and the reading it leads to (-1 for none). */
  readonly largestStep: number;
  readonly stepAt: number;
}

export function columnProfile(values: Float64Array): ColumnProfile {
  let readings = 0;
  let min = Number.POSITIVE_INFINITY;
  let max = Number.NEGATIVE_INFINITY;
  let repeats = 0;
  let largestStep = 0;
  let stepAt = -1;
  let before = Number.NaN;
  for (let at = 0; at < values.length; at++) {
    const value = values[at]!;
    if (Number.isNaN(value)) continue;
    readings++;
    if (value === before) repeats++;
    else {
      const step = value > before ? value - before : before - value;
      if (step > largestStep) {
        largestStep = step;
        stepAt = at;
      }
    }
    before = value;
    if (value < min) min = value;
    if (value > max) max = value;
  }
  return { readings, min, max, repeats, largestStep, stepAt };
}

/** How often each end of a column's numbers is read, and the next number inside it. */
export interface ScaleEnds {
  readonly minCount: number;
  readonly aboveMin: number;
  readonly maxCount: number;
  readonly belowMax: number;
}

export function scaleEnds(
  values: Float64Array,
  { min, max }: { readonly min: number; readonly max: number },
): ScaleEnds {
  let minCount = 0;
  let aboveMin = Number.POSITIVE_INFINITY;
  let maxCount = 0;
  let belowMax = Number.NEGATIVE_INFINITY;
  for (let at = 0; at < values.length; at++) {
    const value = values[at]!;
    if (value === min) minCount++;
    else if (value < aboveMin) aboveMin = value;
    if (value === max) maxCount++;
    else if (value > belowMax) belowMax = value;
  }
  return { minCount, aboveMin, maxCount, belowMax };
}
