import { describe, expect, test } from 'vitest';
import { lagOneAutocorrelation } from '../../src/maths/autocorrelation.ts';
import { autocorrelationVarianceFactor } from '../../src/maths/autocorrelation-variance-factor.ts';
import { mannKendall } from '../../src/maths/mann-kendall.ts';
import { normalQuantile } from '../../src/maths/normal-distribution.ts';
import { theilSenSlope } from '../../src/maths/theil-sen-slope.ts';

const days = 31;
const times = Float64Array.from({ length: days }, (_, i) => i);
const trueSlope = 0.1;
const trials = 600;

/** A month of days that remember the day before (correlation 0.5) on a rising line; the seed makes it repeatable. */
function months(slope: number): Float64Array[] {
  let state = 20260901;
  const uniform = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
  return Array.from({ length: trials }, () => {
    let memory = normalQuantile(uniform()) / Math.sqrt(0.75);
    return times.map((day) => {
      memory = 0.5 * memory + normalQuantile(uniform());
      return slope * day + memory;
    });
  });
}

function factorOf(values: Float64Array): number {
  const { slope } = theilSenSlope(times, values);
  return autocorrelationVarianceFactor(
    days,
    lagOneAutocorrelation(values.map((value, i) => value - slope * i)),
  );
}

function shareOf(all: Float64Array[], holds: (values: Float64Array) => boolean): number {
  return all.filter(holds).length / all.length;
}

describe('days that remember the day before, correlation 0.5', () => {
  test('the 90 % interval of the slope covers the truth only with the variance factor', () => {
    const covers = (values: Float64Array, varianceFactor: number): boolean => {
      const { low, high } = theilSenSlope(times, values, { confidence: 0.9, varianceFactor });
      return low <= trueSlope && trueSlope <= high;
    };
    const rising = months(trueSlope);
    expect(shareOf(rising, (values) => covers(values, 1))).toBeLessThan(0.8);
    expect(shareOf(rising, (values) => covers(values, factorOf(values)))).toBeGreaterThan(0.86);
  });

  test('a trend is found where there is none less than half as often with the factor', () => {
    const flat = months(0);
    const plain = shareOf(flat, (values) => mannKendall(values).increasing < 0.05);
    const corrected = shareOf(flat, (values) => mannKendall(values, factorOf(values)).increasing < 0.05);
    expect(plain).toBeGreaterThan(0.1);
    expect(corrected).toBeLessThan(plain / 2);
  });
});
