import fc from 'fast-check';
import { expect, test } from 'vitest';
import { selectRank } from '../../src/maths/select-rank.ts';

/** From fine to coarse steps, so that some lists are nearly all ties. */
const readings = fc
  .record({
    step: fc.constantFrom(1, 20, 400),
    raw: fc.array(fc.integer({ min: -500, max: 500 }), { minLength: 1, maxLength: 900 }),
  })
  .map(({ step, raw }) => Float64Array.from(raw, (value) => Math.round(value / step) * step + 0));

test('the value of a rank is that of the sorted list, and parts the rest', () => {
  fc.assert(
    fc.property(readings, fc.double({ min: 0, max: 1, noNaN: true }), (values, share) => {
      const sorted = Float64Array.from(values).sort();
      const rank = Math.floor(share * (values.length - 1));
      const found = selectRank(values, rank);
      expect(found).toBe(sorted[rank]);
      expect(values.subarray(0, rank).every((value) => value <= found)).toBe(true);
      expect(values.subarray(rank).every((value) => value >= found)).toBe(true);
      expect(Float64Array.from(values).sort()).toEqual(sorted);
    }),
  );
});

test('what lies outside of the asked part stays', () => {
  const values = Float64Array.of(1, 2, 9, 7, 8, 3);
  expect(selectRank(values, 3, 5, 2)).toBe(8);
  expect([...values.subarray(0, 2)]).toEqual([1, 2]);
  expect(values[5]).toBe(3);
});

test('equal readings are no worst case', () => {
  const values = new Float64Array(600).fill(2.5);
  let reads = 0;
  const counted = new Proxy(values, {
    get(target, key) {
      reads++;
      return Reflect.get(target, key, target);
    },
    set: (target, key, value) => Reflect.set(target, key, value, target),
  });
  expect(selectRank(counted, 300, 600)).toBe(2.5);
  expect(reads).toBeLessThan(20 * 600);
});
