import { leastSquares } from './least-squares.ts';
import { median } from './median.ts';

export interface RobustFit {
  readonly coefficients: Float64Array;
  /** Scale of the residuals: their median size ÷ 0.6745. */
  readonly scale: number;
}

/**
 * Linear regression on the columns (give a column of ones for an intercept) by Huber's M-estimation with k = 1.345 (95 %
 * efficiency on normal data) and the scale taken anew from the residuals in every round: iteratively reweighted least
 * squares, with start, scale and stopping rule of R's `MASS::rlm` (Venables and Ripley). Values must be finite. Throws a
 * RangeError for fewer rows than columns or for columns that depend on each other.
 */
export function robustRegression(
  columns: readonly ArrayLike<number>[],
  observed: ArrayLike<number>,
  { accuracy = 1e-4, rounds = 20 }: { accuracy?: number; rounds?: number } = {},
): RobustFit {
  let fit = weighted(columns, observed, new Float64Array(observed.length).fill(1));
  let scale = 0;
  for (let round = 0; round < rounds; round++) {
    scale = median(fit.residuals.map(Math.abs)) / 0.6745;
    if (scale === 0) break;
    const weights = fit.residuals.map((residual) => Math.min(1, (1.345 * scale) / Math.abs(residual)));
    const next = weighted(columns, observed, weights);
    const change = relativeChange(fit.residuals, next.residuals);
    fit = next;
    if (change <= accuracy) break;
  }
  return { coefficients: fit.coefficients, scale };
}

function weighted(
  columns: readonly ArrayLike<number>[],
  observed: ArrayLike<number>,
  weights: Float64Array,
): { coefficients: Float64Array; residuals: Float64Array } {
  const roots = weights.map(Math.sqrt);
  const { coefficients } = leastSquares(
    columns.map((column) => roots.map((root, i) => root * column[i]!)),
    roots.map((root, i) => root * observed[i]!),
  );
  const residuals = weights.map((_, i) =>
    columns.reduce((rest, column, j) => rest - coefficients[j]! * column[i]!, observed[i]!),
  );
  return { coefficients, residuals };
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
