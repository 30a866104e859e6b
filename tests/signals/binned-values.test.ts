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

test('many at once count as each on its own', () => {
  const value = fc.oneof(fc.double({ min: -120, max: 120, noNaN: true }), fc.constant(Number.NaN));
  const samples = fc.array(fc.tuple(value, fc.integer({ min: 0, max: 2 })), { maxLength: 200 });
  fc.assert(
    fc.property(samples, fc.constantFrom(0.02, 0.1, 1), (pairs, width) => {
      const values = Float64Array.from(pairs, ([one]) => one);
      const flags = Uint8Array.from(pairs, ([, flag]) => flag);
      const shares = [0, 0.1, 0.5, 0.9, 1];
      const bins = () => new BinnedValues(width, -90, 90);
      const [one, known, flagged, merged] = [bins(), bins(), bins(), bins()];
      for (const each of values) if (!Number.isNaN(each)) one.add(each);
      known.addKnown(values, 0, values.length);
      flagged.addFlagged(values, flags, 1, 0, values.length);
      for (const flag of [0, 1, 2]) {
        const part = bins();
        part.addFlagged(values, flags, flag, 0, values.length);
        merged.addAll(part);
      }
      for (const all of [known, merged]) {
        expect(all.total).toBe(one.total);
        for (const share of shares) expect(all.quantile(share)).toBe(one.quantile(share));
      }
      const ones = bins();
      pairs.forEach(([each, flag]) => {
        if (flag === 1 && !Number.isNaN(each)) ones.add(each);
      });
      for (const share of shares) expect(flagged.quantile(share)).toBe(ones.quantile(share));
    }),
  );
});
