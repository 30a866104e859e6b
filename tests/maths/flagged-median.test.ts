import fc from 'fast-check';
import { expect, test } from 'vitest';
import { flaggedMedian } from '../../src/maths/flagged-median.ts';
import { median } from '../../src/maths/median.ts';

const reading = fc.oneof(
  { weight: 6, arbitrary: fc.integer({ min: -40, max: 40 }).map((step) => step / 10) },
  { weight: 1, arbitrary: fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY) },
);

test.each([80, 3000])('is the median of what is flagged, of up to %i values', (maxLength) => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(reading, fc.nat({ max: 2 })), { maxLength, size: 'max' }),
      fc.nat({ max: 20 }),
      (pairs, from) => {
        const values = Float64Array.from(pairs, ([value]) => value);
        const flags = Uint8Array.from(pairs, ([, flag]) => flag);
        const flagged = [...values].filter((_, i) => i >= from && flags[i] === 1);
        expect(flaggedMedian(values, flags, 1, from, values.length)).toBe(median(flagged));
        expect(values).toEqual(Float64Array.from(pairs, ([value]) => value));
      },
    ),
    { numRuns: 50 },
  );
});
