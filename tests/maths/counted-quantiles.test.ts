import fc from 'fast-check';
import { expect, test } from 'vitest';
import { countedQuantiles } from '../../src/maths/counted-quantiles.ts';
import { selectQuantiles } from '../../src/maths/select-rank.ts';

test('counted values have the quantiles of the values one by one', () => {
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 0, max: 5 }), { minLength: 1, maxLength: 30 }),
      fc.array(share, { minLength: 1, maxLength: 5 }),
      (occurrences, shares) => {
        const counts = Int32Array.from(occurrences);
        const values = Float64Array.from(counts, (_, k) => 36 + k / 9);
        const all = Float64Array.from(
          [...counts].flatMap((count, k) => Array<number>(count).fill(values[k]!)),
        );
        const ascending = shares.toSorted((a, b) => a - b);
        expect(countedQuantiles(values, counts, ascending, all.length)).toEqual(
          selectQuantiles(all, ascending),
        );
      },
    ),
  );
});
