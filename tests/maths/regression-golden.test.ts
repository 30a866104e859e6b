import { describe, expect, test } from 'vitest';
import { huberRegression } from '../../src/maths/huber-regression.ts';
import { leastSquares } from '../../src/maths/least-squares.ts';
import { lowess } from '../../src/maths/lowess.ts';
import { distance, golden } from '../golden/load.ts';

const r = golden('golden_R.json');
const series = Object.keys(r).filter((name) => r[name].ols);

function digits(value: number, certified: string): number {
  const reference = Number(certified);
  return -Math.log10(Math.abs(reference === 0 ? value : value / reference - 1) || 1e-17);
}

describe('NIST Statistical Reference Datasets, linear regression, certified values', () => {
  const { linear } = golden('nist_certified.json');
  // Filip (degree ten, condition 1e15) leaves double precision about seven digits; Wampler 1 and 2 are exact polynomials.
  const coefficientDigits: { [name: string]: number } = { Filip: 6.5, Longley: 10, Wampler4: 7, Wampler5: 5 };

  test.each(Object.keys(linear))('%s', (name) => {
    const { data, coef, se, residual_sd } = linear[name];
    const y = data.map((row: number[]) => row[0]);
    const x = data.map((row: number[]) => row.slice(1));
    const terms = Object.keys(coef);
    const columns = terms.map((term) => {
      const power = Number(term.slice(1));
      if (x[0].length > 1) return x.map((row: number[]) => (power === 0 ? 1 : row[power - 1]!));
      return x.map((row: number[]) => row[0]! ** power);
    });
    const fit = leastSquares(columns, y);
    const wanted = coefficientDigits[name] ?? 8.5;
    terms.forEach((term, j) => {
      expect(digits(fit.coefficients[j]!, coef[term])).toBeGreaterThan(wanted);
      if (Number(se[term]) !== 0) expect(digits(fit.standardErrors[j]!, se[term])).toBeGreaterThan(wanted);
    });
    if (Number(residual_sd) !== 0) {
      expect(digits(fit.residualDeviation, residual_sd)).toBeGreaterThan(wanted);
    } else expect(fit.residualDeviation).toBeLessThan(1e-7);
  });
});

describe.each(series)('%s', (name) => {
  const { t, y, ols } = r[name];
  const ones = t.map(() => 1);

  test('least squares are those of R', () => {
    const fit = leastSquares([ones, t], y);
    for (const j of [0, 1]) {
      expect(distance(fit.coefficients[j]!, ols.coef[j])).toBeLessThan(1e-9);
      expect(distance(fit.standardErrors[j]!, ols.se[j])).toBeLessThan(1e-9);
    }
    expect(distance(fit.residualDeviation, ols.sigma)).toBeLessThan(1e-9);
  });
});

test.each(series.filter((name) => r[name].rlm_huber))('Huber regression of %s is that of R rlm', (name) => {
  const fit = huberRegression(r[name].t, r[name].y);
  expect(distance(fit.intercept, r[name].rlm_huber[0])).toBeLessThan(1e-9);
  expect(distance(fit.slope, r[name].rlm_huber[1])).toBeLessThan(1e-9);
});

const smoothed = 'lowess_f0.667_iter3_first10';

test.each(series.filter((name) => r[name][smoothed]))('lowess of %s is that of R', (name) => {
  const fitted = lowess(r[name].t, r[name].y);
  r[name][smoothed].forEach((reference: number, i: number) => {
    expect(distance(fitted[i]!, reference)).toBeLessThan(1e-9);
  });
});
