import fc from 'fast-check';
import { expect, test } from 'vitest';
import { interpolatedMedian } from '../../src/maths/interpolated-median.ts';
import { BinnedValues } from '../../src/signals/binned-values.ts';

test('the median of whole degrees moves between them as the grouped-data median does', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: -20, max: 60 }), { minLength: 1, maxLength: 300 }), (values) => {
      const bins = new BinnedValues(1, -90, 90);
      for (const value of values) bins.add(value);
      const expected = interpolatedMedian(values, 1);
      // Where the middle falls between two bins the two conventions differ by the gap between them.
      const sorted = [...values].sort((a, b) => a - b);
      const split = values.length % 2 === 0 && sorted[values.length / 2] !== sorted[values.length / 2 - 1];
      if (!split) expect(bins.quantile(0.5)).toBeCloseTo(expected, 9);
    }),
  );
});

test('quantiles lie within a bin of the ordered value', () => {
  const bins = new BinnedValues(0.1, -90, 90);
  for (let i = 0; i <= 100; i++) bins.add(i / 10);
  expect(bins.quantile(0.1)).toBeCloseTo(1, 0);
  expect(bins.quantile(0.9)).toBeCloseTo(9, 0);
});

test('what was cleared is forgotten, and nothing has no median', () => {
  const bins = new BinnedValues(0.1, -90, 90);
  bins.add(5);
  bins.clear();
  expect(bins.quantile(0.5)).toBeNaN();
  bins.add(-3);
  expect(bins.quantile(0.5)).toBeCloseTo(-3, 1);
});
