/** A matrix by columns, decomposed: reflections below and on the diagonal, R above it and in `diagonal`. */
export interface Factor {
  readonly columns: readonly Float64Array[];
  readonly diagonal: Float64Array;
  /** Powers of two near the lengths of the original columns, by which these were divided without rounding. */
  readonly scales: Float64Array;
}

/** Householder QR (Golub and Van Loan, Matrix Computations, 5.2). Throws a RangeError when columns are dependent. */
export function factorise(source: readonly ArrayLike<number>[], rows: number): Factor {
  const scales = Float64Array.from(source, powerOfTwoNear);
  const columns = source.map((column, j) => Float64Array.from(column, (value) => value / scales[j]!));
  const diagonal = new Float64Array(source.length);
  columns.forEach((pivot, k) => {
    let squares = 0;
    for (let i = k; i < rows; i++) squares += pivot[i]! ** 2;
    const length = Math.sqrt(squares);
    if (!(length > 1e-14)) throw new RangeError('The columns of the regression depend on each other.');
    diagonal[k] = pivot[k]! > 0 ? -length : length;
    pivot[k]! -= diagonal[k]!;
    for (let j = k + 1; j < columns.length; j++) reflect(pivot, columns[j]!, k, rows);
  });
  return { columns, diagonal, scales };
}

function powerOfTwoNear(column: ArrayLike<number>): number {
  let squares = 0;
  for (let i = 0; i < column.length; i++) squares += column[i]! ** 2;
  return squares === 0 ? 1 : 2 ** Math.round(Math.log2(squares) / 2);
}

function reflect(pivot: Float64Array, target: Float64Array, from: number, rows: number): void {
  let product = 0;
  let squares = 0;
  for (let i = from; i < rows; i++) {
    product += pivot[i]! * target[i]!;
    squares += pivot[i]! ** 2;
  }
  const share = (2 * product) / squares;
  for (let i = from; i < rows; i++) target[i]! -= share * pivot[i]!;
}

/** Coefficients of the original columns that come closest to `observed`. */
export function solveFor({ columns, diagonal, scales }: Factor, observed: ArrayLike<number>): Float64Array {
  const turned = Float64Array.from(observed);
  columns.forEach((pivot, k) => {
    reflect(pivot, turned, k, turned.length);
  });
  const solution = new Float64Array(columns.length);
  for (let k = columns.length - 1; k >= 0; k--) {
    let rest = turned[k]!;
    for (let j = k + 1; j < columns.length; j++) rest -= columns[j]![k]! * solution[j]!;
    solution[k] = rest / diagonal[k]!;
  }
  return solution.map((value, j) => value / scales[j]!);
}

/** √ of the diagonal of (XᵀX)⁻¹: lengths of the rows of R⁻¹, undone from the scaling. */
export function inverseColumnNorms({ columns, diagonal, scales }: Factor): Float64Array {
  const p = columns.length;
  const squares = new Float64Array(p);
  for (let unit = 0; unit < p; unit++) {
    const inverse = new Float64Array(p);
    for (let k = unit; k >= 0; k--) {
      let rest = k === unit ? 1 : 0;
      for (let j = k + 1; j <= unit; j++) rest -= columns[j]![k]! * inverse[j]!;
      inverse[k] = rest / diagonal[k]!;
      squares[k]! += inverse[k]! ** 2;
    }
  }
  return squares.map((square, j) => Math.sqrt(square) / scales[j]!);
}
