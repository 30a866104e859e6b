import { finiteValues } from './finite-values.ts';
import { kendallScore, kendallSignificance, type MannKendall } from './mann-kendall.ts';
import { kendallVariance, tieSizes } from './ties.ts';

/**
 * Mann–Kendall within each season, summed (Hirsch, Slack and Smith, Water Resources Research 18 (1982) 107): a weekday
 * is only compared with the same weekday. `values[i]` belongs to season i modulo `period`; values that are not finite keep
 * their place and are left out. Seasons count as independent.
 */
export function seasonalMannKendall(values: ArrayLike<number>, period: number): Omit<MannKendall, 'tauB'> {
  let s = 0;
  let variance = 0;
  let n = 0;
  for (let season = 0; season < period; season++) {
    const kept = finiteValues(Array.from(values).filter((_, i) => i % period === season));
    s += kendallScore(kept);
    variance += kendallVariance(kept.length, tieSizes(kept));
    n += kept.length;
  }
  return { n, s, variance, ...kendallSignificance(n, s, variance) };
}
