import fc from 'fast-check';
import { expect, test } from 'vitest';
import { knownCount } from '../../src/maths/known-count.ts';

test('counts what is not NaN from one place to another, however far apart', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 9000 }),
      fc.integer({ min: 1, max: 7 }),
      fc.nat(9000),
      (length, nth, from) => {
        const values = Float64Array.from({ length }, (_, i) => (i % nth === 0 ? i : Number.NaN));
        const plain = (first: number) =>
          values.filter((value, i) => i >= first && !Number.isNaN(value)).length;
        expect(knownCount(values)).toBe(plain(0));
        expect(knownCount(values, Math.min(from, length))).toBe(plain(from));
      },
    ),
  );
});
