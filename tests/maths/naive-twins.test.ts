import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { median } from '../../src/maths/median.ts';
import { pelt } from '../../src/maths/pelt.ts';
import { quantile } from '../../src/maths/quantile.ts';
import { runningMedian } from '../../src/maths/running-median.ts';
import { SegmentCost } from '../../src/maths/segment-cost.ts';
import { theilSenSlope } from '../../src/maths/theil-sen-slope.ts';
import { midranks } from '../../src/maths/ties.ts';

// Each fast function beside the plainest way to say the same.
const reading = fc.integer({ min: -30, max: 30 }).map((tenths) => tenths / 10);
const gappy = fc.array(
  fc.oneof({ weight: 5, arbitrary: reading }, { weight: 1, arbitrary: fc.constant(Number.NaN) }),
  {
    maxLength: 60,
  },
);

function sortedFinite(values: readonly number[]): number[] {
  return values.filter(Number.isFinite).sort((a, b) => a - b);
}

function plainMedian(values: readonly number[]): number {
  const sorted = sortedFinite(values);
  if (sorted.length === 0) return Number.NaN;
  return (sorted[(sorted.length - 1) >> 1]! + sorted[sorted.length >> 1]!) / 2;
}

function expectClose(value: number, wanted: number): void {
  if (Number.isNaN(wanted)) expect(value).toBeNaN();
  else expect(value).toBeCloseTo(wanted, 9);
}

test('median by selection is the middle of the sorted values', () => {
  fc.assert(fc.property(gappy, (values) => expectClose(median(values), plainMedian(values))));
});

test('quantile by selection is read off the sorted values', () => {
  fc.assert(
    fc.property(gappy, fc.double({ min: 0, max: 1, noNaN: true }), (values, probability) => {
      const sorted = sortedFinite(values);
      const place = (sorted.length - 1) * probability;
      const low = sorted[Math.floor(place)] ?? Number.NaN;
      const high = sorted[Math.ceil(place)] ?? Number.NaN;
      expectClose(quantile(values, probability), low + (place - Math.floor(place)) * (high - low));
    }),
  );
});

test('running median is the median of each window', () => {
  fc.assert(
    fc.property(gappy, fc.integer({ min: 1, max: 15 }), (values, width) => {
      const half = Math.floor(width / 2);
      const plain = values.map((_, i) => plainMedian(values.slice(Math.max(0, i - half), i + half + 1)));
      expect(Array.from(runningMedian(values, width))).toEqual(plain);
    }),
  );
});

test('Theil–Sen slope is the median of all slopes', () => {
  const points = fc.array(reading, { minLength: 2, maxLength: 25 });
  fc.assert(
    fc.property(points, (values) => {
      const slopes = values.flatMap((later, j) =>
        values.slice(0, j).map((earlier, i) => (later - earlier) / (j - i)),
      );
      expect(
        theilSenSlope(
          values.map((_, i) => i),
          values,
        ).slope,
      ).toBeCloseTo(plainMedian(slopes), 12);
    }),
  );
});

test('Theil–Sen moves with the line and is blind to an offset', () => {
  const points = fc.array(reading, { minLength: 3, maxLength: 20 });
  fc.assert(
    fc.property(points, reading, reading, (values, tilt, offset) => {
      const times = values.map((_, i) => i);
      const before = theilSenSlope(times, values);
      const after = theilSenSlope(
        times,
        values.map((value, i) => value + tilt * i + offset),
      );
      expect(after.slope).toBeCloseTo(before.slope + tilt, 9);
      expect(after.low).toBeLessThanOrEqual(after.slope + 1e-12);
      expect(after.high).toBeGreaterThanOrEqual(after.slope - 1e-12);
    }),
  );
});

test('serial correlation widens the interval of a slope', () => {
  const values = [1, 3, 2, 5, 4, 7, 5, 8, 9, 7];
  const times = values.map((_, i) => i);
  const plain = theilSenSlope(times, values);
  const inflated = theilSenSlope(times, values, { varianceFactor: 4 });
  expect(inflated.slope).toBe(plain.slope);
  expect(inflated.low).toBeLessThan(plain.low);
  expect(inflated.high).toBeGreaterThan(plain.high);
});

test('too many points for all pairs are refused with the way out', () => {
  const many = new Float64Array(2001);
  expect(() => theilSenSlope(many, many)).toThrow('2001 points');
});

test('midranks are places among the sorted values', () => {
  fc.assert(
    fc.property(fc.array(reading, { maxLength: 30 }), (values) => {
      const plain = values.map((value) => {
        const below = values.filter((other) => other < value).length;
        const equal = values.filter((other) => other === value).length;
        return below + (equal + 1) / 2;
      });
      expect(Array.from(midranks(values))).toEqual(plain);
    }),
  );
});

describe.each([
  ['BIC', 2],
  ['MBIC', 3],
] as const)('PELT with %s', (penalty, factor) => {
  test.each([1, 2, 4])('segments of at least %d: no division is cheaper than the one found', (shortest) => {
    const values = fc.array(
      fc.integer({ min: -40, max: 40 }).map((tenths) => tenths / 10),
      { minLength: 1, maxLength: 40 },
    );
    fc.assert(
      fc.property(values, (series) => {
        const cost = new SegmentCost(series);
        const lengthPart = (length: number): number => (penalty === 'MBIC' ? Math.log(length) : 0);
        const segment = (from: number, to: number): number => cost.between(from, to) + lengthPart(to - from);
        const perChange = factor * Math.log(series.length);
        const best = [-perChange];
        for (let to = 1; to <= series.length; to++) {
          best[to] = Number.POSITIVE_INFINITY;
          for (let from = 0; from <= to - shortest; from++) {
            best[to] = Math.min(best[to]!, best[from]! + segment(from, to) + perChange);
          }
        }
        const changes = pelt(series, penalty, shortest);
        const edges = [0, ...changes, series.length];
        const found = edges
          .slice(1)
          .reduce((sum, to, i) => sum + segment(edges[i]!, to), perChange * changes.length);
        if (series.length >= shortest) expect(found).toBeCloseTo(best[series.length]!, 8);
      }),
    );
  });
});
