import { median } from './median.ts';
import { medianAbsoluteDeviation, normalConsistency } from './median-absolute-deviation.ts';

/**
 * Standard deviation of the noise on a series that also drifts and steps: scaled MAD of the differences between
 * neighbours, divided by √2. Neighbours are values next to each other of which both are finite. For
 * finely resolved data; heavy rounding can make it 0.
 */
export function noiseFromDifferences(values: ArrayLike<number>): number {
  const differences = new Float64Array(Math.max(0, values.length - 1));
  for (let i = 0; i < differences.length; i++) differences[i] = values[i + 1]! - values[i]!;
  return (normalConsistency * medianAbsoluteDeviation(differences)) / Math.SQRT2;
}

/** The series in units of its own noise, from its median; NaN stays. All 0 where the noise is 0 and nothing varies. */
export function standardised(values: ArrayLike<number>, noise = noiseFromDifferences(values)): Float64Array {
  const centre = median(values);
  return Float64Array.from(values, (value) => (value === centre ? 0 : (value - centre) / noise));
}
