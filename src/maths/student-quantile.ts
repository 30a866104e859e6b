import { normalQuantile } from './normal-distribution.ts';

/**
 * Quantile of Student's t: exact for one and two degrees of freedom, else the expansion of Abramowitz and Stegun
 * 26.7.5 in powers of 1/ν, four terms (at 97.5 % right to 0.2 % from ν = 3 and to 0.01 % from ν = 6 on). `freedom`
 * need not be whole.
 */
export function studentQuantile(probability: number, freedom: number): number {
  if (!(freedom >= 1)) return Number.NaN;
  if (freedom < 1.5) return Math.tan(Math.PI * (probability - 0.5));
  const centred = 2 * probability - 1;
  if (freedom < 2.5) return centred * Math.sqrt(2 / (1 - centred * centred));
  const z = normalQuantile(probability);
  const s = z * z;
  const terms = [
    (z * (s + 1)) / 4,
    (z * ((5 * s + 16) * s + 3)) / 96,
    (z * (((3 * s + 19) * s + 17) * s - 15)) / 384,
    (z * ((((79 * s + 776) * s + 1482) * s - 1920) * s - 945)) / 92_160,
  ];
  return terms.reduce((sum, term, k) => sum + term / freedom ** (k + 1), z);
}
