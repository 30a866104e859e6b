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

test('many at once count as each on its own, and parts that are put together as the whole', () => {
  const value = fc.oneof(fc.double({ min: -120, max: 120, noNaN: true }), fc.constant(Number.NaN));
  fc.assert(
    fc.property(
      fc.array(value, { maxLength: 200 }),
      fc.nat({ max: 200 }),
      fc.constantFrom(0.02, 0.1, 1),
      (list, cut, width) => {
        const values = Float64Array.from(list);
        const middle = Math.min(cut, values.length);
        const bins = () => new BinnedValues(width, -90, 90);
        const [one, known, merged, part] = [bins(), bins(), bins(), bins()];
        for (const each of values) if (!Number.isNaN(each)) one.add(each);
        known.addKnown(values, 0, values.length);
        merged.addKnown(values, 0, middle);
        part.addKnown(values, middle, values.length);
        merged.addAll(part);
        for (const all of [known, merged]) {
          expect(all.total).toBe(one.total);
          for (const share of [0, 0.1, 0.5, 0.9, 1]) expect(all.quantile(share)).toBe(one.quantile(share));
        }
      },
    ),
  );
});
