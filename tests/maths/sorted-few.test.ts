import fc from 'fast-check';
import { expect, test } from 'vitest';
import { finiteValues } from '../../src/maths/finite-values.ts';
import { quantile } from '../../src/maths/quantile.ts';
import { selectQuantile } from '../../src/maths/select-rank.ts';

const value = fc.oneof(
  { weight: 6, arbitrary: fc.integer({ min: -300, max: 300 }).map((tenths) => tenths / 10) },
  { weight: 1, arbitrary: fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY) },
);

test('a quantile of few values is the very number that selection gives, for arrays of both kinds', () => {
  fc.assert(
    fc.property(
      fc.array(value, { maxLength: 90 }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (values, probability) => {
        const wanted = selectQuantile(finiteValues(values), probability);
        expect(quantile(values, probability)).toBe(wanted);
        expect(quantile(Float64Array.from(values), probability)).toBe(wanted);
      },
    ),
  );
});

test('there is no quantile of nothing, or outside 0 to 1', () => {
  expect(quantile([Number.NaN], 0.5)).toBeNaN();
  expect(quantile([1, 2], 1.1)).toBeNaN();
  expect(quantile([1, 2], -0.1)).toBeNaN();
});
