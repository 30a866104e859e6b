import { finiteValues } from './finite-values.ts';
import { selectQuantile } from './select-rank.ts';

/**
 * Median of values that a logger rounded to `resolution`: each value stands for the interval of that width
 * around it, so the median moves smoothly instead of sticking at one step. L + q·(½n − F) ÷ f with the interval's lower
 * edge L = median − q/2, the number F of values below it and f within it (grouped-data median, e.g. Yule and Kendall).
 * The plain median for a resolution of 0. Values that are not finite are left out; NaN when none remains.
 */
export function interpolatedMedian(values: ArrayLike<number>, resolution: number): number {
  const kept = finiteValues(values);
  const middle = selectQuantile(kept, 0.5);
  if (!(resolution > 0) || kept.length === 0) return middle;
  const lowerEdge = middle - resolution / 2;
  // A value may miss its step by a rounding error of the conversion, never by a thousandth of the step.
  const slack = resolution / 1000;
  let below = 0;
  let within = 0;
  for (const value of kept) {
    if (value <= lowerEdge + slack) below++;
    else if (value < middle + resolution / 2 - slack) within++;
  }
  // None within: the middle two are different steps, and the median is the edge between them.
  return within === 0 ? middle : lowerEdge + (resolution * (kept.length / 2 - below)) / within;
}
