import { describe, expect, test } from 'vitest';
import { hamedRao } from '../../src/maths/hamed-rao.ts';
import { mannKendall } from '../../src/maths/mann-kendall.ts';
import { seasonalMannKendall } from '../../src/maths/seasonal-mann-kendall.ts';
import { siegelSlope } from '../../src/maths/siegel-slope.ts';
import { theilSenSlope } from '../../src/maths/theil-sen-slope.ts';
import { distance, golden, goldenRows } from '../golden/load.ts';

// R 4.2.2 with trend, Kendall, zyp, mblm, modifiedmk; scipy 1.10.1. See tests/golden/SOURCES.md.
const r = golden('golden_R.json');
const scipy = golden('golden_scipy.json');
const series = Object.keys(r).filter((name) => name !== '_versions');

describe.each(series)('%s', (name) => {
  const { t, y, mann_kendall: kendall, sen } = r[name];

  test('Mann–Kendall is that of R and scipy', () => {
    const result = mannKendall(y);
    expect(result.s).toBe(kendall.S);
    expect(distance(result.variance, kendall.varS)).toBeLessThan(1e-9);
    expect(distance(result.z, kendall.z)).toBeLessThan(1e-9);
    expect(distance(result.twoSided, kendall.p_two_sided)).toBeLessThan(1e-9);
    expect(distance(result.tauB, scipy[name].kendalltau_b.tau)).toBeLessThan(1e-9);
  });

  test('Theil–Sen slope, both intercepts and rank limits are those of R and scipy', () => {
    const result = theilSenSlope(t, y);
    const separate = scipy[name].theilslopes_separate;
    expect(distance(result.slope, sen.slope)).toBeLessThan(1e-9);
    expect(distance(result.intercept, scipy[name].theilslopes_joint.intercept)).toBeLessThan(1e-9);
    expect(distance(result.interceptThroughMedians, separate.intercept)).toBeLessThan(1e-9);
    expect(distance(result.low, separate.lo)).toBeLessThan(1e-9);
    expect(distance(result.high, separate.hi)).toBeLessThan(1e-9);
  });

  test('Theil–Sen limits interpolated between ranks are those of Gilbert', () => {
    const result = theilSenSlope(t, y, { limits: 'interpolated' });
    expect(distance(result.low, sen.ci95_gilbert_interpolated[0])).toBeLessThan(1e-9);
    expect(distance(result.high, sen.ci95_gilbert_interpolated[1])).toBeLessThan(1e-9);
  });

  test('Siegel slope is that of scipy and of R mblm', () => {
    const result = siegelSlope(t, y);
    const reference = scipy[name].siegelslopes_hierarchical;
    expect(distance(result.slope, reference.slope)).toBeLessThan(1e-9);
    expect(distance(result.hierarchicalIntercept, reference.intercept)).toBeLessThan(1e-9);
    if (r[name].siegel_repeated_median) {
      expect(distance(result.slope, r[name].siegel_repeated_median[1])).toBeLessThan(1e-9);
      expect(distance(result.intercept, r[name].siegel_repeated_median[0])).toBeLessThan(1e-9);
    }
  });
});

const withHamedRao = series.filter((name) => r[name].hamed_rao_modifiedmk);

test.each(withHamedRao)('Hamed–Rao of %s is that of R modifiedmk', (name) => {
  const reference = r[name].hamed_rao_modifiedmk;
  const result = hamedRao(r[name].y);
  expect(distance(result.variance, reference['new.variance'])).toBeLessThan(1e-9);
  expect(distance(result.z, reference['Corrected Zc'])).toBeLessThan(1e-9);
});

test('the seasonal test of monthly temperatures is that of R trend (smk.test)', () => {
  const result = seasonalMannKendall(r.nottem.y, 12);
  const reference = r.nottem.seasonal_mk_trend;
  expect(result.s).toBe(reference.S);
  expect(distance(result.variance, reference.varS)).toBeLessThan(1e-9);
  expect(distance(result.twoSided, reference.p)).toBeLessThan(1e-9);
});

describe('the series and values published with pyMannKendall', () => {
  const rows = goldenRows('trend/pymk_arbitrary_1d.csv');
  const y = rows.map((row) => (row.y === '' ? Number.NaN : Number(row.y)));
  const published = golden('pymannkendall_published.json').expected;

  test('the plain test', () => {
    const result = mannKendall(y);
    expect(result.s).toBe(published.original_test.s);
    expect(distance(result.variance, published.original_test.var_s)).toBeLessThan(1e-9);
    expect(distance(result.twoSided, published.original_test.p)).toBeLessThan(1e-9);
  });

  test('the slope, with missing values keeping their place in time', () => {
    const result = theilSenSlope(
      y.map((_, i) => i),
      y,
    );
    expect(distance(result.slope, published.sens_slope.slope)).toBeLessThan(1e-9);
  });

  test('the seasonal test', () => {
    const result = seasonalMannKendall(y, 12);
    const reference = published['seasonal_test, period=12'];
    expect(result.s).toBe(reference.s);
    expect(distance(result.variance, reference.var_s)).toBeLessThan(1e-9);
    expect(distance(result.z, reference.z)).toBeLessThan(1e-9);
  });
});

test('compressor starts a day of a real refrigerator rise as scipy says (tracebase D32131, ODbL)', () => {
  const day = golden('starts_per_day_D32131.json');
  const result = theilSenSlope(day.t_days, day.starts);
  expect(distance(result.slope, day.theilslopes.slope)).toBeLessThan(1e-9);
  expect(distance(result.interceptThroughMedians, day.theilslopes.intercept)).toBeLessThan(1e-9);
  expect(distance(result.low, day.theilslopes.lo)).toBeLessThan(1e-9);
  expect(distance(result.high, day.theilslopes.hi)).toBeLessThan(1e-9);
  expect(distance(mannKendall(day.starts).tauB, day.kendall_tau_b)).toBeLessThan(1e-9);
});
