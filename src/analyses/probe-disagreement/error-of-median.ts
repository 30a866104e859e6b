import { median } from '../../maths/median.ts';
import { normalConsistency } from '../../maths/median-absolute-deviation.ts';

/** 1.2533 σ ÷ √n, the large-sample standard error of a normal sample's median. */
export function errorOfMedian(values: Float64Array): number {
  const centre = median(values);
  const scale = normalConsistency * median(values.map((value) => Math.abs(value - centre)));
  return (1.2533 * scale) / Math.sqrt(values.length);
}
