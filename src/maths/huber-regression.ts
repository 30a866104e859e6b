import { robustRegression } from './robust-regression.ts';

export interface HuberFit {
  readonly intercept: number;
  readonly slope: number;
  /** Scale of the residuals: their median size ÷ 0.6745. */
  readonly scale: number;
}

/** Line by Huber's M-estimation (`robustRegression`). Values must be finite, at least three. */
export function huberRegression(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
  options: { accuracy?: number; rounds?: number } = {},
): HuberFit {
  const ones = new Float64Array(values.length).fill(1);
  const { coefficients, scale } = robustRegression([ones, times], values, options);
  return { intercept: coefficients[0]!, slope: coefficients[1]!, scale };
}
