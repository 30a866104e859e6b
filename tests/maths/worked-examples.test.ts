import { describe, expect, test } from 'vitest';
import { autocorrelationVarianceFactor } from '../../src/maths/autocorrelation-variance-factor.ts';
import { benjaminiHochberg } from '../../src/maths/benjamini-hochberg.ts';
import { ewma } from '../../src/maths/ewma.ts';
import { interpolatedMedian } from '../../src/maths/interpolated-median.ts';
import { kaplanMeier, medianSurvival } from '../../src/maths/kaplan-meier.ts';
import { logistic } from '../../src/maths/logistic.ts';
import { mannKendall } from '../../src/maths/mann-kendall.ts';
import { normalProbability, normalQuantile, normalUpperTail } from '../../src/maths/normal-distribution.ts';
import { onePoleLag } from '../../src/maths/one-pole-lag.ts';
import { piecewiseLinear } from '../../src/maths/piecewise-linear.ts';
import { poissonInterval } from '../../src/maths/poisson-interval.ts';
import { wilsonInterval } from '../../src/maths/wilson-interval.ts';

test('Kaplan–Meier: remission under 6-mercaptopurine (Freireich et al. 1963, the textbook example; from memory)', () => {
  const events = [6, 6, 6, 7, 10, 13, 16, 22, 23];
  const watched = [6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35];
  const steps = kaplanMeier(
    [...events, ...watched],
    [...events.map(() => true), ...watched.map(() => false)],
  );
  expect(steps.map((step) => [step.time, step.atRisk, Number(step.survival.toFixed(3))])).toEqual([
    [6, 21, 0.857],
    [7, 17, 0.807],
    [10, 15, 0.753],
    [13, 12, 0.69],
    [16, 11, 0.627],
    [22, 7, 0.538],
    [23, 6, 0.448],
  ]);
  expect(medianSurvival(steps)).toBe(23);
});

test('a median that was not reached is not invented', () => {
  expect(medianSurvival(kaplanMeier([5, 8, 9], [true, false, false]))).toBeNaN();
});

test('Benjamini–Hochberg: the fifteen p-values of their paper of 1995 (from memory) give four at 0.05', () => {
  const p = [
    0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.324, 0.4262, 0.5719, 0.6528,
    0.759, 1,
  ];
  const adjusted = benjaminiHochberg(p);
  expect(adjusted.filter((value) => value <= 0.05)).toHaveLength(4);
  expect(adjusted[3]).toBeCloseTo((0.0095 * 15) / 4, 12);
  expect(Array.from(benjaminiHochberg([0.5, Number.NaN, 0.01]))).toEqual([0.5, Number.NaN, 0.02]);
});

test('Wilson interval: examples of Newcombe, Statistics in Medicine 17 (1998) 857 (from memory)', () => {
  for (const [hits, trials, low, high] of [
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ] as const) {
    const interval = wilsonInterval(hits, trials);
    expect(interval.low).toBeCloseTo(low, 4);
    expect(interval.high).toBeCloseTo(high, 4);
  }
  expect(wilsonInterval(0, 0)).toEqual({ low: 0, high: 1 });
});

test('Poisson interval: the exact limits of the usual tables (Garwood 1936; from memory)', () => {
  expect(poissonInterval(0).low).toBe(0);
  expect(poissonInterval(0).high).toBeCloseTo(3.6889, 4);
  expect(poissonInterval(5).low).toBeCloseTo(1.6235, 4);
  expect(poissonInterval(5).high).toBeCloseTo(11.6683, 4);
  expect(poissonInterval(10).low).toBeCloseTo(4.7954, 4);
  expect(poissonInterval(10).high).toBeCloseTo(18.3904, 4);
});

describe('normal distribution', () => {
  // Abramowitz and Stegun, table 26.1 and 26.2; scipy 1.10.1 for the far tail.
  test('probability and tail', () => {
    expect(normalProbability(0)).toBe(0.5);
    expect(normalProbability(1)).toBeCloseTo(0.841344746068543, 14);
    expect(normalProbability(1.96)).toBeCloseTo(0.9750021048517795, 14);
    expect(normalUpperTail(6) / 9.865876450376946e-10 - 1).toBeCloseTo(0, 10);
    expect(normalUpperTail(3) / 0.0013498980316301 - 1).toBeCloseTo(0, 10);
  });

  test('quantile, and back', () => {
    expect(normalQuantile(0.975)).toBeCloseTo(1.959963984540054, 12);
    expect(normalQuantile(0.95)).toBeCloseTo(1.6448536269514722, 12);
    for (const p of [1e-12, 1e-5, 0.01, 0.3, 0.5, 0.8, 0.999])
      expect(normalProbability(normalQuantile(p)) / p).toBeCloseTo(1, 10);
    expect(normalQuantile(0)).toBe(Number.NEGATIVE_INFINITY);
    expect(normalQuantile(1.1)).toBeNaN();
  });

  test('logistic', () => {
    expect(logistic(0)).toBe(0.5);
    expect(logistic(2)).toBeCloseTo(0.8807970779778823, 14);
  });
});

describe('interpolated median', () => {
  test('moves within one step of the logger where the plain median sticks', () => {
    expect(interpolatedMedian([1, 1, 1, 2, 2], 1)).toBeCloseTo(0.5 + 2.5 / 3, 12);
    expect(interpolatedMedian([1, 1, 2, 2, 2], 1)).toBeCloseTo(1.5 + 0.5 / 3, 12);
    expect(interpolatedMedian([1, 1, 2, 2], 1)).toBeCloseTo(1.5, 12);
    expect(interpolatedMedian([1, 1, 3, 3], 1)).toBe(2);
  });

  test('is the plain median without a resolution, and NaN without a value', () => {
    expect(interpolatedMedian([1, 1, 1, 2, 2], 0)).toBe(1);
    expect(interpolatedMedian([Number.NaN], 1)).toBeNaN();
  });

  test('comes nearer to the truth than the plain median on rounded values', () => {
    const truth = 3.3;
    const values = Array.from({ length: 401 }, (_, i) => Math.round(truth + (i - 200) / 100));
    expect(Math.abs(interpolatedMedian(values, 1) - truth)).toBeLessThan(0.01);
  });
});

describe('lag and average', () => {
  test('a step reaches 63 % after one time constant', () => {
    const response = onePoleLag([0, ...new Array(10).fill(1)], 1, 10);
    expect(response[10]).toBeCloseTo(1 - Math.exp(-1), 12);
  });

  test('a gap leaves the average as it was', () => {
    expect(Array.from(ewma([2, Number.NaN, 4], 0.5))).toEqual([2, Number.NaN, 3]);
  });
});

test('one knee is found where two lines meet, with its gain', () => {
  const times = Array.from({ length: 30 }, (_, i) => 1.7e12 + i * 86_400_000);
  const values = times.map((_, i) => 2 + (i > 18 ? 0.3 * (i - 18) : 0) + (i % 2 === 0 ? 0.05 : -0.05));
  const knee = piecewiseLinear(times, values)!;
  expect(Math.abs(knee.index - 18)).toBeLessThanOrEqual(1);
  expect(knee.slopeAfter * 86_400_000).toBeCloseTo(0.3, 1);
  expect(knee.gain).toBeGreaterThan(10);
  expect(piecewiseLinear([1, 2, 3], [1, 2, 3])).toBeNull();
});

test('the variance factor of serial correlation: its own sum for ten values, 1 without correlation', () => {
  const r = (10 * 0.3 + 2) / 6;
  let sum = 1;
  for (let k = 1; k < 10; k++) sum += 2 * (1 - k / 10) * r ** k;
  expect(autocorrelationVarianceFactor(10, 0.3)).toBeCloseTo(sum, 12);
  expect(autocorrelationVarianceFactor(10, -0.5)).toBe(1);
  expect(autocorrelationVarianceFactor(3, 0.5)).toBe(1);
  expect(autocorrelationVarianceFactor(30, Number.NaN)).toBe(1);
});

test('Mann–Kendall says nothing of two values, and no trend of equal ones', () => {
  expect(mannKendall([1, 2]).twoSided).toBeNaN();
  expect(mannKendall([3, 3, 3, 3]).twoSided).toBe(1);
  const rising = mannKendall([1, 2, 3, 4, 5, 6]);
  expect(rising.increasing).toBeCloseTo(rising.twoSided / 2, 12);
});
