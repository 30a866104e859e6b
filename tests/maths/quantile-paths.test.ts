import fc from 'fast-check';
import { expect, test } from 'vitest';
import { finiteValues } from '../../src/maths/finite-values.ts';
import { quantile } from '../../src/maths/quantile.ts';
import { selectQuantile, selectQuantiles } from '../../src/maths/select-rank.ts';

const value = fc.oneof(
  { weight: 6, arbitrary: fc.integer({ min: -300, max: 300 }).map((tenths) => tenths / 10) },
  { weight: 1, arbitrary: fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY) },
);

test('a quantile is the very number that selection gives, for arrays of both kinds and of every length', () => {
  fc.assert(
    fc.property(
      fc.array(value, { maxLength: 60 }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (values, probability) => {
        const wanted = selectQuantile(finiteValues(values), probability);
        expect(quantile(values, probability)).toBe(wanted);
        expect(quantile(Float64Array.from(values), probability)).toBe(wanted);
      },
    ),
  );
});

test('several quantiles at once are those found one by one', () => {
  fc.assert(
    fc.property(
      fc.array(value, { maxLength: 2000 }),
      fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 5 }),
      (values, shares) => {
        const kept = finiteValues(values);
        const ascending = shares.sort((a, b) => a - b);
        const wanted = ascending.map((share) => selectQuantile(kept.slice(), share));
        expect(selectQuantiles(kept, ascending)).toEqual(wanted);
      },
    ),
  );
});

test('the median of a record is the middle of its sorted values, on either side of every limit', () => {
  for (const length of [1, 2, 12, 13, 1023, 1024, 1025, 5000]) {
    const values = Float64Array.from({ length }, (_, i) => (i * 7919) % 5003);
    const sorted = values.slice().sort();
    expect(quantile(values, 0.5)).toBe((sorted[(length - 1) >> 1]! + sorted[length >> 1]!) / 2);
  }
});

test('there is no quantile of nothing, or outside 0 to 1', () => {
  expect(quantile([Number.NaN], 0.5)).toBeNaN();
  expect(quantile([1, 2], 1.1)).toBeNaN();
  expect(quantile([1, 2], -0.1)).toBeNaN();
});
