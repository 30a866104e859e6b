import { poissonInterval } from '../../src/maths/poisson-interval.ts';
import { wilsonInterval } from '../../src/maths/wilson-interval.ts';

const percent = (share: number): string => `${(100 * share).toFixed(0)}`;

/** `17 of 18: 94 % (74 to 99)`, the 95 % Wilson interval in brackets. */
export function shareText(hits: number, trials: number): string {
  if (trials === 0) return 'none';
  const { low, high } = wilsonInterval(hits, trials);
  return `${hits} of ${trials}: ${percent(hits / trials)} % (${percent(low)} to ${percent(high)})`;
}

/** `3 in 80: 0.04 (0.01 to 0.11)`, the 95 % Poisson interval in brackets. */
export function rateText(count: number, exposure: number): string {
  if (exposure === 0) return 'none';
  const { low, high } = poissonInterval(count);
  const rate = (value: number): string => (value / exposure).toFixed(3);
  return `${count} in ${exposure.toFixed(0)}: ${rate(count)} (${rate(low)} to ${rate(high)})`;
}

export function medianOf(values: readonly number[]): number | null {
  if (values.length === 0) return null;
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
