import { finiteValues } from './finite-values.ts';
import { normalProbability, normalUpperTail } from './normal-distribution.ts';
import { kendallVariance, tieSizes } from './ties.ts';

export interface MannKendall {
  readonly n: number;
  /** Pairs that rise minus pairs that fall. */
  readonly s: number;
  /** With ties, times the variance factor. */
  readonly variance: number;
  /** With continuity correction. */
  readonly z: number;
  readonly twoSided: number;
  /** Chance of such a rise (fall) without a trend. */
  readonly increasing: number;
  readonly decreasing: number;
  /** Kendall's τ with the correction for ties. */
  readonly tauB: number;
}

/**
 * Trend test of Mann, Econometrica 13 (1945) 245, and Kendall: are later values larger more often than smaller?
 * Values in time order; those that are not finite are left out. `varianceFactor` (1 for independent values)
 * makes up for serial correlation: see `autocorrelationVarianceFactor`. p-values are NaN for fewer than three
 * values, 1 where all are equal. O(n²): for daily figures, at most some thousand values.
 */
export function mannKendall(values: ArrayLike<number>, varianceFactor = 1): MannKendall {
  const kept = finiteValues(values);
  const n = kept.length;
  const s = kendallScore(kept);
  const ties = tieSizes(kept);
  const variance = kendallVariance(n, ties) * varianceFactor;
  const pairs = (n * (n - 1)) / 2;
  const tiedPairs = ties.reduce((sum, size) => sum + (size * (size - 1)) / 2, 0);
  return {
    n,
    s,
    variance,
    tauB: s / Math.sqrt(pairs * (pairs - tiedPairs)),
    ...kendallSignificance(n, s, variance),
  };
}

/** Pairs that rise minus pairs that fall. */
export function kendallScore(values: Float64Array): number {
  let s = 0;
  for (let j = 1; j < values.length; j++) {
    const later = values[j]!;
    for (let i = 0; i < j; i++) {
      const earlier = values[i]!;
      if (later > earlier) s++;
      else if (later < earlier) s--;
    }
  }
  return s;
}

export function kendallSignificance(
  n: number,
  s: number,
  variance: number,
): Pick<MannKendall, 'z' | 'twoSided' | 'increasing' | 'decreasing'> {
  if (n < 3) return { z: Number.NaN, twoSided: Number.NaN, increasing: Number.NaN, decreasing: Number.NaN };
  if (!(variance > 0)) return { z: 0, twoSided: 1, increasing: 1, decreasing: 1 };
  const z = (s - Math.sign(s)) / Math.sqrt(variance);
  return {
    z,
    twoSided: Math.min(1, 2 * normalUpperTail(Math.abs(z))),
    increasing: normalUpperTail(z),
    decreasing: normalProbability(z),
  };
}
