import { finitePairs } from './finite-values.ts';
import { median } from './median.ts';

/**
 * Repeated medians: for each point the median slope to all others, and the median of these (Siegel, Biometrika 69
 * (1982) 242); withstands up to half of the points being wrong. `intercept` is the median of each point's
 * median intercept, `hierarchicalIntercept` the median of y − slope · t. Points that are not finite are left out; NaN
 * for fewer than two times. O(n²).
 */
export function siegelSlope(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
): { readonly slope: number; readonly intercept: number; readonly hierarchicalIntercept: number } {
  const { first: t, second: y } = finitePairs(times, values);
  const slopes = new Float64Array(t.length);
  const intercepts = new Float64Array(t.length);
  const pointSlopes = new Float64Array(t.length);
  const pointIntercepts = new Float64Array(t.length);
  for (let i = 0; i < t.length; i++) {
    for (let j = 0; j < t.length; j++) {
      const apart = t[j]! - t[i]!;
      pointSlopes[j] = apart === 0 ? Number.NaN : (y[j]! - y[i]!) / apart;
      pointIntercepts[j] = apart === 0 ? Number.NaN : (t[j]! * y[i]! - t[i]! * y[j]!) / apart;
    }
    slopes[i] = median(pointSlopes);
    intercepts[i] = median(pointIntercepts);
  }
  const slope = median(slopes);
  return {
    slope,
    intercept: median(intercepts),
    hierarchicalIntercept: median(y.map((value, i) => value - slope * t[i]!)),
  };
}
