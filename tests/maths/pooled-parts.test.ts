import fc from 'fast-check';
import { expect, test } from 'vitest';
import { countedParts, type PartedSeries, selectedParts, singleParts } from '../../src/maths/pooled-parts.ts';
import { quantiles } from '../../src/maths/quantile.ts';

const shares = [0, 0.1, 0.5, 0.9, 1];
const parts = 4;
const resolution = 5 / 90;

const reading = fc.record({
  step: fc.oneof(fc.integer({ min: -40, max: 40 }), fc.constant(Number.NaN)),
  place: fc.integer({ min: -1, max: 5 }),
});
const oneSeries = fc
  .tuple(fc.array(reading, { maxLength: 60 }), fc.constantFrom([0, 1, 2, 0, 1, 2], [3, 3, 2, 1, 0, 0]))
  .map(
    ([readings, partOf]): PartedSeries => ({
      values: Float64Array.from(readings, ({ step }) => step * resolution - 17.8),
      places: Int32Array.from(readings, ({ place }) => place),
      partOf: Int32Array.from(partOf),
    }),
  );

/** The plainest way to say it. */
function readingsOf(series: readonly PartedSeries[], chosen: readonly number[]): number[] {
  return series.flatMap(({ values, places, partOf }) =>
    [...values].filter((value, i) => !Number.isNaN(value) && chosen.includes(partOf[places[i]!] ?? -1)),
  );
}

test('counted or selected, pooled parts have the quantiles and counts of their readings', () => {
  fc.assert(
    fc.property(
      fc.array(oneSeries, { minLength: 1, maxLength: 3 }),
      fc.double({ min: -20.5, max: -15, noNaN: true }),
      (series, limit) => {
        const counted = countedParts(series, parts, resolution);
        const selected = selectedParts(series, parts);
        expect(counted === null).toBe(readingsOf(series, [0, 1, 2, 3]).length === 0);
        for (const pools of counted === null ? [selected] : [counted, selected]) {
          for (const chosen of [[0], [1], [0, 2], [0, 1, 2, 3]]) {
            expect(pools.quantiles(chosen, shares)).toEqual(quantiles(readingsOf(series, chosen), shares));
          }
          const larger = pools.pooled([[0, 3], [1], []]);
          expect(larger.quantiles([0, 1], shares)).toEqual(quantiles(readingsOf(series, [0, 1, 3]), shares));
          expect([0, 1, 2].map((part) => larger.count(part))).toEqual([
            readingsOf(series, [0, 3]).length,
            readingsOf(series, [1]).length,
            0,
          ]);
          const sliced = pools.slice(1, 4);
          expect(sliced.quantiles([1, 2], shares)).toEqual(quantiles(readingsOf(series, [2, 3]), shares));
          expect(sliced.count(0)).toBe(readingsOf(series, [1]).length);
          for (const part of [0, 1, 2, 3]) {
            const plain = readingsOf(series, [part]);
            expect(pools.count(part)).toBe(plain.length);
            expect(pools.above(part, limit)).toBe(plain.filter((value) => value > limit).length);
          }
        }
      },
    ),
  );
});

test('readings that stand on no steps, on very many, or too often on one, are not counted', () => {
  const series = (values: number[]): PartedSeries => ({
    values: Float64Array.from(values),
    places: new Int32Array(values.length),
    partOf: Int32Array.of(0),
  });
  expect(countedParts([series([1, 1.3, 2])], 1, 1)).toBeNull();
  expect(countedParts([series([1, 2, 3])], 1, 0)).toBeNull();
  expect(countedParts([series([0, 1e9])], 1, 0.1)).toBeNull();
  expect(countedParts([series([1, 2]), series([2, 2.25])], 1, 1)).toBeNull();
  expect(countedParts([series(Array<number>(65_535).fill(2))], 1, 1)!.count(0)).toBe(65_535);
  expect(countedParts([series(Array<number>(65_536).fill(2))], 1, 1)).toBeNull();
});

test('parts of one reading each pool like the readings that they are', () => {
  const value = fc.oneof(fc.integer({ min: -40, max: 40 }), fc.constant(Number.NaN));
  fc.assert(
    fc.property(fc.array(value, { minLength: 4, maxLength: 12 }), (readings) => {
      const values = Float64Array.from(readings);
      const places = Int32Array.from(readings, (_, place) => place);
      const plain = selectedParts([{ values, places, partOf: places }], values.length);
      const single = singleParts(values);
      for (const chosen of [[0], [1, 3], [0, 1, 2, 3], []]) {
        expect(single.quantiles(chosen, shares)).toEqual(plain.quantiles(chosen, shares));
      }
      const [larger, expected] = [single, plain].map((pools) => pools.pooled([[0, 3], [1], []]));
      expect(larger!.quantiles([0, 1, 2], shares)).toEqual(expected!.quantiles([0, 1, 2], shares));
      for (const part of [0, 1, 2, 3]) {
        expect(single.count(part)).toBe(plain.count(part));
        expect(single.above(part, 3.5)).toBe(plain.above(part, 3.5));
      }
    }),
  );
});
