import fc from 'fast-check';
import { expect, test } from 'vitest';
import { median } from '../../src/maths/median.ts';
import type { Probe } from '../../src/model/log.ts';
import { airOf } from '../../src/signals/air.ts';

const reading = fc.oneof(
  { weight: 5, arbitrary: fc.integer({ min: -3, max: 3 }) },
  { weight: 1, arbitrary: fc.constant(Number.NaN) },
);

test('mean and median over the probes that are known, whatever their number', () => {
  const records = fc
    .tuple(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 0, max: 40 }))
    .chain(([probes, count]) =>
      fc.array(fc.array(reading, { minLength: count, maxLength: count }), {
        minLength: probes,
        maxLength: probes,
      }),
    );
  fc.assert(
    fc.property(records, (rows) => {
      const probes = rows.map((values) => ({ record: { values: Float64Array.from(values) } }) as Probe);
      const count = rows[0]!.length;
      const air = airOf(
        probes,
        probes.map(() => true),
        count,
      );
      for (let i = 0; i < count; i++) {
        const known = rows.map((values) => values[i]!).filter((value) => !Number.isNaN(value));
        const sum = known.reduce((total, value) => total + value, 0);
        expect(Math.abs(air.median[i]! - median(known)) > 1e-12).toBe(false);
        expect(Number.isNaN(air.median[i])).toBe(known.length === 0);
        expect(Math.abs(air.mean[i]! - sum / known.length) > 1e-12).toBe(false);
        expect(Number.isNaN(air.mean[i])).toBe(known.length === 0);
      }
    }),
    { numRuns: 300 },
  );
});
