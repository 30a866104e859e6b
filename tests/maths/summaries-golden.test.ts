import { describe, expect, test } from 'vitest';
import { lagOneAutocorrelation } from '../../src/maths/autocorrelation.ts';
import { interquartileRange } from '../../src/maths/interquartile-range.ts';
import { mean } from '../../src/maths/mean.ts';
import { median } from '../../src/maths/median.ts';
import { medianAbsoluteDeviation } from '../../src/maths/median-absolute-deviation.ts';
import { qnScale, snScale } from '../../src/maths/pairwise-scale.ts';
import { quantiles } from '../../src/maths/quantile.ts';
import { runningMedian } from '../../src/maths/running-median.ts';
import { sampleStandardDeviation } from '../../src/maths/sample-standard-deviation.ts';
import { distance, golden } from '../golden/load.ts';

const r = golden('golden_R.json');
const series = Object.keys(r).filter((name) => name !== '_versions');

test.each(series)(
  'mean, deviation, quantiles, MAD, IQR, autocorrelation, Qn, Sn of %s are those of R',
  (name) => {
    const { y, univariate: reference } = r[name];
    expect(distance(mean(y), reference.mean)).toBeLessThan(1e-9);
    expect(distance(sampleStandardDeviation(y), reference.sd)).toBeLessThan(1e-9);
    expect(distance(median(y), reference.median)).toBeLessThan(1e-9);
    expect(distance(medianAbsoluteDeviation(y), reference.mad_raw)).toBeLessThan(1e-9);
    expect(distance(interquartileRange(y), reference.iqr7)).toBeLessThan(1e-9);
    expect(distance(lagOneAutocorrelation(y), reference.acf1)).toBeLessThan(1e-9);
    const shares = Object.keys(reference.quantiles_type7);
    const found = quantiles(
      y,
      shares.map((share) => Number.parseFloat(share) / 100),
    );
    shares.forEach((share, i) => {
      expect(distance(found[i]!, reference.quantiles_type7[share])).toBeLessThan(1e-9);
    });
    // robustbase's search differs from the exact order statistic by up to 4e-8 on four series with one decimal.
    expect(distance(qnScale(y), reference.Qn)).toBeLessThan(1e-7);
    expect(distance(snScale(y), reference.Sn)).toBeLessThan(1e-9);
  },
);

const withRunningMedian = series.filter((name) => r[name].runmed5);

test.each(withRunningMedian)('the running median of %s is that of R away from the ends', (name) => {
  const found = runningMedian(r[name].y, 5);
  const reference: number[] = r[name].runmed5;
  for (let i = 2; i < reference.length - 2; i++) expect(found[i]).toBe(reference[i]);
});

describe('NIST Statistical Reference Datasets, certified values', () => {
  const { univariate } = golden('nist_certified.json');
  // Near-constant data with a huge mean: what double precision leaves (R reaches 9.5 and 8.3 digits).
  const deviationDigits: { [name: string]: number } = { NumAcc3: 9.4, NumAcc4: 8.2 };

  test.each(Object.keys(univariate))('%s', (name) => {
    const { values, mean: certifiedMean, sd, acf1 } = univariate[name];
    const digits = (value: number, certified: string): number =>
      -Math.log10(Math.abs(value / Number(certified) - 1) || 1e-17);
    expect(digits(mean(values), certifiedMean)).toBeGreaterThan(14);
    expect(digits(sampleStandardDeviation(values), sd)).toBeGreaterThan(deviationDigits[name] ?? 12);
    expect(digits(lagOneAutocorrelation(values), acf1)).toBeGreaterThan(deviationDigits[name] ?? 12);
  });
});
