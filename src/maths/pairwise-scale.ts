import { finiteValues } from './finite-values.ts';
import { selectRank } from './select-rank.ts';

/**
 * Scale estimators of Rousseeuw and Croux, J. Am. Stat. Assoc. 88 (1993) 1273, that need no centre and keep
 * their meaning with half of the data wrong; with the finite-sample factors of R's robustbase. Both look at all
 * pairs: for daily figures, at most some thousand values. Values that are not finite are left out; NaN for
 * fewer than two.
 */
export function qnScale(values: ArrayLike<number>): number {
  const kept = finiteValues(values);
  const n = kept.length;
  if (n < 2) return Number.NaN;
  const distances = new Float64Array((n * (n - 1)) / 2);
  let count = 0;
  for (let i = 1; i < n; i++) for (let j = 0; j < i; j++) distances[count++] = Math.abs(kept[i]! - kept[j]!);
  const half = Math.floor(n / 2) + 1;
  return 2.21914 * qnFactor(n) * selectRank(distances, (half * (half - 1)) / 2 - 1);
}

const qnSmallFactors = [
  0.399356, 0.99365, 0.51321, 0.84401, 0.6122, 0.85877, 0.66993, 0.87344, 0.72014, 0.88906, 0.75743,
];

function qnFactor(n: number): number {
  if (n <= 12) return qnSmallFactors[n - 2]!;
  const bias =
    n % 2 === 1 ? 1.60188 + (-2.1284 - 5.172 / n) / n : 3.67561 + (1.9654 + (6.987 - 77 / n) / n) / n;
  return 1 / (1 + bias / n);
}

export function snScale(values: ArrayLike<number>): number {
  const kept = finiteValues(values);
  const n = kept.length;
  if (n < 2) return Number.NaN;
  const outer = new Float64Array(n);
  const distances = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) distances[j] = Math.abs(kept[i]! - kept[j]!);
    outer[i] = selectRank(distances, Math.floor(n / 2));
  }
  return 1.1926 * snFactor(n) * selectRank(outer, Math.floor((n + 1) / 2) - 1);
}

const snSmallFactors = [0.743, 1.851, 0.954, 1.351, 0.993, 1.198, 1.005, 1.131];

function snFactor(n: number): number {
  if (n <= 9) return snSmallFactors[n - 2]!;
  return n % 2 === 1 ? n / (n - 0.9) : 1;
}
