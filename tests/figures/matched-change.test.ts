import { describe, expect, test } from 'vitest';
import { createRandom } from '../../sample-logs/maker/random.ts';
import { matchedChange, meanAtHoursOf } from '../../src/figures/matched-change.ts';

const range = (from: number, to: number) => ({ from, to });

describe('a change at matched hours', () => {
  test('by hand: nights against nights and days against days', () => {
    const day = [1, 1, 5, 5, 5, 1];
    const values = Float64Array.from([...day, ...day, ...day.map((value) => value - 2)]);
    const change = matchedChange(values, range(0, 12), range(12, 18))!;
    expect(change).toMatchObject({ before: 3, after: 1, difference: -2, blocksBefore: 12, blocksAfter: 6 });
    expect(change.low).toBeCloseTo(-2, 9);
    expect(change.high).toBeCloseTo(-2, 9);
  });

  test('hours that one side lacks do not count', () => {
    const values = Float64Array.from([1, 1, 9, 9, 9, 1, 1, 1, Number.NaN, Number.NaN, Number.NaN, 1]);
    expect(matchedChange(values, range(0, 6), range(6, 12))!.difference).toBeCloseTo(0, 9);
    expect(meanAtHoursOf(values, range(0, 6), range(6, 12))).toBe(1);
  });

  test('too little on one side is no comparison', () => {
    const values = new Float64Array(12).fill(Number.NaN).fill(1, 0, 8);
    expect(matchedChange(values, range(0, 6), range(6, 12))).toBeNull();
  });

  test('its interval holds the true change in nine of ten histories that remember the block before', () => {
    const random = createRandom(3);
    let held = 0;
    const histories = 400;
    for (let n = 0; n < histories; n++) {
      let level = random.normal();
      const values = Float64Array.from({ length: 48 }, (_, b) => {
        level = 0.5 * level + random.normal();
        return level + (b >= 18 ? 1 : 0);
      });
      const { low, high } = matchedChange(values, range(0, 18), range(18, 48))!;
      if (low <= 1 && high >= 1) held++;
    }
    expect(held / histories).toBeGreaterThan(0.9);
  });
});
