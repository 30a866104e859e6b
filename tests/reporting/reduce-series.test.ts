import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { columnRange, reduceSeries } from '../../src/reporting/reduce-series.ts';

const same = (value: number): number => value;
const grid = (count: number) => ({ startMs: 1_000_000, stepMs: 60_000, count });
const readings = fc.array(fc.oneof(fc.integer({ min: -50, max: 50 }), fc.constant(Number.NaN)), {
  minLength: 1,
  maxLength: 400,
});

describe('a series reduced to what the pixels can show', () => {
  test('keeps the lowest and the highest value of every pixel column', () => {
    fc.assert(
      fc.property(readings, fc.integer({ min: 1, max: 60 }), (list, pixels) => {
        const values = Float64Array.from(list);
        const range = { from: 0, to: values.length };
        const { values: reduced, times } = reduceSeries(values, grid(values.length), range, pixels, same);
        const columns = values.length <= 2 * pixels ? values.length : pixels;
        for (let column = 0; column < columns; column++) {
          const { from, to } = columnRange(range, columns, column);
          const known = [...values.slice(from, to)].filter((value) => !Number.isNaN(value));
          const kept = reduced.filter((value, i) => {
            const index = (times[i]! - 1_000_000) / 60_000;
            return value !== null && index >= from && index < to;
          });
          if (known.length === 0) expect(kept).toEqual([]);
          else {
            expect(Math.min(...(kept as number[]))).toBe(Math.min(...known));
            expect(Math.max(...(kept as number[]))).toBe(Math.max(...known));
          }
        }
      }),
      { numRuns: 200 },
    );
  });

  test('never draws more than two points and a gap a pixel, in ascending time', () => {
    fc.assert(
      fc.property(readings, fc.integer({ min: 1, max: 60 }), (list, pixels) => {
        const values = Float64Array.from(list);
        const { times } = reduceSeries(
          values,
          grid(values.length),
          { from: 0, to: values.length },
          pixels,
          same,
        );
        expect(times.length).toBeLessThanOrEqual(2 * pixels);
        expect(times.every((time, i) => i === 0 || time > times[i - 1]!)).toBe(true);
      }),
      { numRuns: 200 },
    );
  });

  test('breaks the line once where a column knows nothing', () => {
    const values = Float64Array.from([1, 2, Number.NaN, Number.NaN, Number.NaN, 3, 4]);
    const reduced = reduceSeries(values, grid(7), { from: 0, to: 7 }, 100, same);
    expect(reduced.values).toEqual([1, 2, null, 3, 4]);
  });

  test('ends without a break and gives nothing for a record that is empty', () => {
    const tail = Float64Array.from([1, Number.NaN]);
    expect(reduceSeries(tail, grid(2), { from: 0, to: 2 }, 10, same).values).toEqual([1]);
    const empty = new Float64Array(50).fill(Number.NaN);
    expect(reduceSeries(empty, grid(50), { from: 0, to: 50 }, 10, same).values).toEqual([]);
  });
});
