import { median } from '../../maths/median.ts';
import { normalConsistency } from '../../maths/median-absolute-deviation.ts';

/** 1.2533 σ ÷ √n, the large-sample standard error of a normal sample's median. */
export function errorOfMedian(values: Float64Array): number {
  return (1.2533 * scatter(values)) / Math.sqrt(values.length);
}

/** Of one or two values, which tell no scatter of their own: with that of others of their kind, or their own where that is more. */
export function errorOfFew(values: Float64Array, others: Float64Array): number {
  return (1.2533 * Math.max(scatter(values), scatter(others))) / Math.sqrt(values.length);
}

function scatter(values: Float64Array): number {
  const centre = median(values);
  return normalConsistency * median(values.map((value) => Math.abs(value - centre)));
}
