import { describe, expect, it } from 'vitest';
import { leastSquares } from '../../src/maths/least-squares.ts';
import { localTrend } from '../../src/maths/local-trend.ts';

const values = [1.2, 1.9, 3.1, 3.8, 5.3, 5.9, 7.2, 7.8, 9.4, 9.7];
const noise = 0.04;
const vague = { level: 0, slope: 0, levelVariance: 1e7, covariance: 0, slopeVariance: 1e7 };
const trend = (series: readonly number[], slopeWander: number, growth = 0) =>
  localTrend(series, { start: vague, noise, slopeWander, growth });

describe('localTrend', () => {
  it('is the least squares line, with its variances, where the slope does not wander and nothing was known before', () => {
    const fromEnd = values.map((_, i) => i - (values.length - 1));
    const line = leastSquares([values.map(() => 1), fromEnd], values);
    const found = trend(values, 0);
    expect(found.level).toBeCloseTo(line.coefficients[0]!, 5);
    expect(found.slope).toBeCloseTo(line.coefficients[1]!, 5);
    const unit = noise / line.residualDeviation ** 2;
    expect(found.levelVariance).toBeCloseTo(line.standardErrors[0]! ** 2 * unit, 5);
    expect(found.slopeVariance).toBeCloseTo(line.standardErrors[1]! ** 2 * unit, 5);
  });

  it('follows a slope that changes, and the sooner the more it may wander', () => {
    const kinked = [
      ...Array.from({ length: 12 }, (_, i) => 0.1 * i),
      ...Array.from({ length: 5 }, (_, i) => 1.6 + 0.5 * i),
    ];
    const slopes = [0, 0.001, 0.05].map((wander) => trend(kinked, wander).slope);
    expect(slopes[0]!).toBeLessThan(slopes[1]!);
    expect(slopes[1]!).toBeLessThan(slopes[2]!);
    expect(slopes[2]!).toBeCloseTo(0.5, 1);
  });

  it('keeps to a growth that is known: a series that grows so leaves the slope as it is', () => {
    const start = { level: 0, slope: 1, levelVariance: 1e-9, covariance: 0, slopeVariance: 1e-9 };
    const growing = [0, 1, 2.1, 3.31];
    const found = localTrend(growing, { start, noise: 1, slopeWander: 0, growth: 0.1 });
    expect(found.level).toBeCloseTo(3.31, 9);
    expect(found.slope).toBeCloseTo(1.331, 9);
  });

  it('passes over a missing value, which leaves it less sure, and is not carried away by a wild one', () => {
    const gap = values.map((value, i) => (i === 8 ? Number.NaN : value));
    expect(trend(gap, 0.01).levelVariance).toBeGreaterThan(trend(values, 0.01).levelVariance);
    const wild = values.map((value, i) => (i === 9 ? 60 : value));
    expect(trend(wild, 0.001).level).toBeLessThan(11);
  });
});
