import { describe, expect, it } from 'vitest';
import { leastSquares } from '../../src/maths/least-squares.ts';
import { localTrend } from '../../src/maths/local-trend.ts';

const values = [1.2, 1.9, 3.1, 3.8, 5.3, 5.9, 7.2, 7.8, 9.4, 9.7];
const noise = 0.04;
const vague = { level: 0, slope: 0, levelVariance: 1e7, covariance: 0, slopeVariance: 1e7 };
const trend = (series: readonly number[], slopeWander: number) =>
  localTrend(series, { start: vague, noise, slopeWander });

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

  it('does not run away from a series that bends and holds its level, however small its wander', () => {
    const held = Array.from({ length: 40 }, (_, i) => Math.min(4, 0.5 * i));
    const start = { level: 0, slope: 0.3, levelVariance: noise, covariance: 0, slopeVariance: 0.09 };
    const found = localTrend(held, { start, noise, slopeWander: 1e-4 });
    expect(Math.abs(found.level - 4)).toBeLessThan(0.2);
    expect(Math.abs(found.slope)).toBeLessThan(0.05);
  });

  it('follows a level that jumps and stays from the second value on, where one alone is held to be wild', () => {
    const start = { level: 0, slope: 0, levelVariance: noise, covariance: 0, slopeVariance: 1e-4 };
    const after = (values: readonly number[]) =>
      localTrend(values, { start, noise, slopeWander: 1e-3 }).level;
    const still = [0, 0, 0, 0, 0, 0];
    expect(after([...still, 5])).toBeLessThan(1);
    expect(after([...still, 5, 5, 5])).toBeGreaterThan(3);
    expect(after([...still, 5, -5])).toBeLessThan(1);
  });

  it('passes over a missing value, which leaves it less sure, and is not carried away by a wild one', () => {
    const gap = values.map((value, i) => (i === 8 ? Number.NaN : value));
    expect(trend(gap, 0.01).levelVariance).toBeGreaterThan(trend(values, 0.01).levelVariance);
    const wild = values.map((value, i) => (i === 9 ? 60 : value));
    expect(trend(wild, 0.001).level).toBeLessThan(11);
  });
});
