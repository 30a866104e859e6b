import { type Factor, factorise, inverseColumnNorms, solveFor } from './householder.ts';

export interface LeastSquares {
  readonly coefficients: Float64Array;
  readonly standardErrors: Float64Array;
  /** Standard deviation of the residuals, by n − p. */
  readonly residualDeviation: number;
  readonly residuals: Float64Array;
}

/**
 * Linear regression of `observed` on the columns (give a column of ones for an intercept), by Householder's QR
 * decomposition with columns scaled and one step of refinement. All values must be finite. Throws a RangeError
 * for fewer rows than columns or for columns that depend on each other.
 */
export function leastSquares(
  columns: readonly ArrayLike<number>[],
  observed: ArrayLike<number>,
): LeastSquares {
  const n = observed.length;
  const p = columns.length;
  if (n < p) throw new RangeError(`${p} coefficients cannot be fitted to ${n} values.`);
  const factor: Factor = factorise(columns, n);
  const coefficients = solveFor(factor, observed);
  const correction = solveFor(factor, residualsOf(columns, observed, coefficients));
  for (let j = 0; j < p; j++) coefficients[j]! += correction[j]!;
  const residuals = residualsOf(columns, observed, coefficients);
  let squares = 0;
  for (const residual of residuals) squares += residual * residual;
  const residualDeviation = Math.sqrt(squares / (n - p));
  const standardErrors = inverseColumnNorms(factor).map((norm) => norm * residualDeviation);
  return { coefficients, standardErrors, residualDeviation, residuals };
}

function residualsOf(
  columns: readonly ArrayLike<number>[],
  observed: ArrayLike<number>,
  coefficients: Float64Array,
): Float64Array {
  return Float64Array.from(observed, (value, i) => {
    let rest = value;
    for (let j = 0; j < columns.length; j++) rest -= coefficients[j]! * columns[j]![i]!;
    return rest;
  });
}
