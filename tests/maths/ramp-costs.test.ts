import fc from 'fast-check';
import { expect, test } from 'vitest';
import { RampCosts } from '../../src/maths/ramp-costs.ts';

const day = fc.record({
  gap: fc.integer({ min: 1, max: 5 }),
  value: fc.integer({ min: -400, max: 400 }).map((tenths) => tenths / 10),
  weight: fc.integer({ min: 1, max: 10 }).map((tenths) => tenths / 10),
});

/** Weighted squared error about the least-squares levels, point by point. */
function plainCost(times: number[], values: number[], weights: number[], start: number, end: number): number {
  const share = times.map((time) =>
    Math.max(0, Math.min(1, (time - times[start]!) / (times[end]! - times[start]!))),
  );
  const mean = (of: number[]) =>
    of.reduce((sum, one, i) => sum + weights[i]! * one, 0) / weights.reduce((sum, one) => sum + one, 0);
  const meanShare = mean(share);
  const meanValue = mean(values);
  let products = 0;
  let squares = 0;
  values.forEach((value, i) => {
    products += weights[i]! * (share[i]! - meanShare) * (value - meanValue);
    squares += weights[i]! * (share[i]! - meanShare) ** 2;
  });
  const slope = products / squares;
  return values.reduce(
    (sum, value, i) => sum + weights[i]! * (value - meanValue - slope * (share[i]! - meanShare)) ** 2,
    0,
  );
}

test('the error of every ramp is within its slack of the error summed point by point', () => {
  fc.assert(
    fc.property(fc.array(day, { minLength: 4, maxLength: 40 }), fc.nat(2e9), (days, begin) => {
      let at = begin;
      const times = days.map(({ gap }) => (at += gap));
      const values = days.map(({ value }) => value);
      const weights = days.map(({ weight }) => weight);
      const costs = new RampCosts(
        Float64Array.from(times),
        Float64Array.from(values),
        Float64Array.from(weights),
      );
      for (let start = 0; start < days.length - 1; start++) {
        for (let end = start + 1; end < days.length; end++) {
          const wanted = plainCost(times, values, weights, start, end);
          expect(Math.abs(costs.costOf(start, end) - wanted)).toBeLessThanOrEqual(costs.slack + 1e-12);
        }
      }
    }),
  );
});
