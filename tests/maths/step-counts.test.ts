import fc from 'fast-check';
import { expect, test } from 'vitest';
import { selectQuantiles } from '../../src/maths/select-rank.ts';
import { StepCounts } from '../../src/maths/step-counts.ts';

const shares = [0, 0.1, 0.5, 0.9, 1];

test('part by part the quantiles are those of a selection', () => {
  const parts = fc.array(fc.array(fc.integer({ min: -300, max: 300 }), { maxLength: 60 }), {
    minLength: 1,
    maxLength: 4,
  });
  fc.assert(
    fc.property(parts, fc.constantFrom(0.1, 0.5, 5 / 90), (steps, resolution) => {
      const readings = steps.map((part) => Float64Array.from(part, (step) => step * resolution - 17.8));
      const counts = StepCounts.of(Float64Array.from(readings.flatMap((part) => [...part])), resolution);
      for (const part of readings) {
        if (counts === null) continue;
        expect(counts.count(part, part.length)).toBe(true);
        expect(counts.quantiles(shares)).toEqual(selectQuantiles(part.slice(), shares));
        counts.clear();
      }
    }),
  );
});

test('values that share a step, and a series without steps, are left to others', () => {
  const values = Float64Array.of(1, 1.2, 3);
  const counts = StepCounts.of(values, 1)!;
  expect(counts.count(values, 3)).toBe(false);
  expect(StepCounts.of(values, 0)).toBeNull();
  expect(StepCounts.of(Float64Array.of(0, 1e9), 0.1)).toBeNull();
});
