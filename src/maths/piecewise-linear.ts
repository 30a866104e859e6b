import { leastSquares } from './least-squares.ts';

export interface Knee {
  /** Time at which the slope changes: one of the times given. */
  readonly at: number;
  readonly index: number;
  readonly slopeBefore: number;
  readonly slopeAfter: number;
  /** Value of the line at the knee. */
  readonly level: number;
  /** How much better than one straight line by Schwarz's criterion; above 10 is strong (Kass and Raftery 1995). */
  readonly gain: number;
}

/**
 * Two joined straight lines by least squares, the joint searched over all times with at least `margin` points on either
 * side. Times ascending, all values finite. null where there are too few points. O(n²): for daily figures.
 */
export function piecewiseLinear(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
  margin = 3,
): Knee | null {
  const n = values.length;
  if (n < 2 * margin + 1) return null;
  const ones = new Float64Array(n).fill(1);
  // A time scale from 0 keeps epoch times from swamping the slopes.
  const origin = times[0]!;
  const since = Float64Array.from(times, (time) => time - origin);
  let best: Knee | null = null;
  let leastSpread = Number.POSITIVE_INFINITY;
  for (let index = margin; index < n - margin; index++) {
    const knee = since[index]!;
    const after = since.map((time) => Math.max(0, time - knee));
    const { coefficients, residuals } = leastSquares([ones, since, after], values);
    const spread = sumOfSquares(residuals);
    if (!(spread < leastSpread)) continue;
    leastSpread = spread;
    const [start, slope, bend] = coefficients as unknown as [number, number, number];
    best = {
      at: times[index]!,
      index,
      slopeBefore: slope,
      slopeAfter: slope + bend,
      level: start + slope * knee,
      gain: 0,
    };
  }
  if (best === null) return null;
  const straight = sumOfSquares(leastSquares([ones, since], values).residuals);
  const floor = Number.EPSILON * (straight + Number.MIN_VALUE);
  const gain = n * Math.log(Math.max(straight, floor) / Math.max(leastSpread, floor)) - 2 * Math.log(n);
  return { ...best, gain };
}

function sumOfSquares(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value * value;
  return sum;
}
