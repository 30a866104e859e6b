import fc from 'fast-check';
import { expect, test } from 'vitest';
import { alignSampled } from '../../../src/importing/assembling/align.ts';
import { factsOf } from '../../../src/importing/naming/column-facts.ts';
import type { Point } from '../../../src/importing/points/point.ts';

// Each fast walk beside the plainest way to say the same.
const minute = 60_000;
const cell = fc.oneof({ weight: 3, arbitrary: fc.constantFrom(0, 1) }, fc.constant(Number.NaN));

function pointOf(cells: readonly number[]): Point {
  const times = Float64Array.from(cells, (_, at) => at * minute);
  return { times, values: Float64Array.from(cells), status: true } as unknown as Point;
}

test('rows that stand on the grid are held in place as they are when copied', () => {
  fc.assert(
    fc.property(
      fc.array(cell, { minLength: 1, maxLength: 40 }),
      fc.integer({ min: 1, max: 6 }),
      (cells, hold) => {
        const grid = { startMs: 0, stepMs: minute, count: cells.length };
        const copied = alignSampled(pointOf(cells), grid, hold * minute, false);
        const inPlace = alignSampled(pointOf(cells), grid, hold * minute, true);
        expect(Array.from(inPlace)).toEqual(Array.from(copied));
      },
    ),
  );
});

test('starts, time on and run lengths are those of a walk over every reading', () => {
  fc.assert(
    fc.property(fc.array(cell, { minLength: 3, maxLength: 60 }), (cells) => {
      const known = cells.map((value, at) => ({ value, at })).filter(({ value }) => !Number.isNaN(value));
      let starts = 0;
      let onMinutes = 0;
      let before = { value: cells[0]! > 0.5 ? 1 : 0, at: 0 };
      for (const one of known.filter(({ at }) => at > 0)) {
        if (before.value === 1) onMinutes += one.at - before.at;
        if (one.value === 1 && before.value === 0) starts++;
        before = one;
      }
      const days = (cells.length - 1) / 1440;
      const facts = factsOf(pointOf(cells));
      expect(facts.startsPerDay).toBeCloseTo(starts / days, 6);
      expect(facts.onShare).toBeCloseTo(onMinutes / (cells.length - 1), 9);
    }),
  );
});
