import { leastSquares } from './least-squares.ts';
import { median } from './median.ts';

export interface HuberFit {
  readonly intercept: number;
  readonly slope: number;
  /** Scale of the residuals: their median size ÷ 0.6745. */
  readonly scale: number;
}

/**
 * Line by Huber's M-estimation with k = 1.345 (95 % efficiency on normal data) and the scale taken anew from the
 * residuals in every round: iteratively reweighted least squares, with start, scale and stopping rule of R's
 * `MASS::rlm` (Venables and Ripley). Values must be finite, at least three.
 */
export function huberRegression(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
  { accuracy = 1e-4, rounds = 20 }: { accuracy?: number; rounds?: number } = {},
): HuberFit {
  let fit = weightedLine(times, values, new Float64Array(values.length).fill(1));
  let scale = 0;
  for (let round = 0; round < rounds; round++) {
    scale = median(fit.residuals.map(Math.abs)) / 0.6745;
    if (scale === 0) break;
    const weights = fit.residuals.map((residual) => Math.min(1, (1.345 * scale) / Math.abs(residual)));
    const next = weightedLine(times, values, weights);
    const change = relativeChange(fit.residuals, next.residuals);
    fit = next;
    if (change <= accuracy) break;
  }
  return { intercept: fit.intercept, slope: fit.slope, scale };
}

function weightedLine(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
  weights: Float64Array,
): { intercept: number; slope: number; residuals: Float64Array } {
  const roots = weights.map(Math.sqrt);
  const { coefficients } = leastSquares(
    [roots, roots.map((root, i) => root * times[i]!)],
    roots.map((root, i) => root * values[i]!),
  );
  const [intercept, slope] = coefficients as unknown as [number, number];
  return { intercept, slope, residuals: weights.map((_, i) => values[i]! - intercept - slope * times[i]!) };
}

function relativeChange(before: Float64Array, after: Float64Array): number {
  let moved = 0;
  let size = 0;
  for (let i = 0; i < before.length; i++) {
    moved += (before[i]! - after[i]!) ** 2;
    size += before[i]! ** 2;
  }
  return Math.sqrt(moved / Math.max(1e-20, size));
}
