import fc from 'fast-check';
import { expect, test } from 'vitest';
import { countedPools, normRoom, selectedPools } from '../../src/norms/norm-pools.ts';

const shares = [0.1, 0.5, 0.9];
const partOf = Int32Array.of(0, 1, 2, 0, 1, 2);

test('counted or selected, the pools of readings in steps are the same', () => {
  const reading = fc.record({
    step: fc.oneof(fc.integer({ min: -40, max: 40 }), fc.constant(Number.NaN)),
    block: fc.integer({ min: -1, max: 5 }),
  });
  fc.assert(
    fc.property(fc.array(reading, { maxLength: 80 }), (readings) => {
      const resolution = 5 / 90;
      const placed = {
        values: Float64Array.from(readings, ({ step }) => step * resolution),
        blocks: Int32Array.from(readings, ({ block }) => block),
        resolution,
      };
      const counted = countedPools(placed, partOf, 3);
      const selected = selectedPools(placed, partOf, 3, normRoom(readings.length));
      const isEmpty = readings.every(({ step, block }) => block < 0 || Number.isNaN(step));
      expect(counted === null).toBe(isEmpty);
      for (const parts of [[0], [1], [0, 2], [0, 1, 2]]) {
        const expected = selected.quantiles(parts, shares);
        expect(counted?.quantiles(parts, shares) ?? expected).toEqual(expected);
      }
    }),
  );
});

test('readings that stand on no steps are not counted', () => {
  const placed = { values: Float64Array.of(1, 1.3, 2), blocks: Int32Array.of(0, 0, 0), resolution: 1 };
  expect(countedPools(placed, partOf, 3)).toBeNull();
});
