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

/** Profiles a column piece by piece, as its values come in. */
export class ColumnProfiler implements ColumnProfile {
  readings = 0;
  min = Number.POSITIVE_INFINITY;
  max = Number.NEGATIVE_INFINITY;
  repeats = 0;
  largestStep = 0;
  stepAt = -1;
  private last = Number.NaN;

  /** Takes `values[from, to)`, which follow those taken before. */
  take(values: Float64Array, from: number, to: number): void {
    let { readings, min, max, repeats, largestStep, stepAt, last } = this;
    for (let at = from; at < to; at++) {
      const value = values[at]!;
      if (Number.isNaN(value)) continue;
      readings++;
      if (value === last) {
        repeats++;
        continue;
      }
      const step = Math.abs(value - last);
      if (step > largestStep) {
        largestStep = step;
        stepAt = at;
      }
      last = value;
      if (value < min) min = value;
      if (value > max) max = value;
    }
    this.readings = readings;
    this.min = min;
    this.max = max;
    this.repeats = repeats;
    this.largestStep = largestStep;
    this.stepAt = stepAt;
    this.last = last;
  }
}

export function columnProfile(values: Float64Array): ColumnProfile {
  const profiler = new ColumnProfiler();
  profiler.take(values, 0, values.length);
  return profiler;
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
