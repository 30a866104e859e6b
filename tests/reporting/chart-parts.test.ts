import { describe, expect, test } from 'vitest';
import { shortPointName, spreadLabels } from '../../src/reporting/charts/end-labels.ts';
import { bandPath, linePath } from '../../src/reporting/charts/path.ts';
import { linearScale, valueTicks } from '../../src/reporting/charts/scale.ts';

const same = (value: number): number => value;

describe('the parts of a chart', () => {
  test('value ticks are round, inside the domain and about as many as wanted', () => {
    expect(valueTicks({ low: 29.3, high: 45.8 }, 5)).toEqual([30, 35, 40, 45]);
    expect(valueTicks({ low: -0.13, high: 0.31 }, 4)).toEqual([-0.1, 0, 0.1, 0.2, 0.3]);
    // A step of 5 would leave one tick.
    expect(valueTicks({ low: 35.6, high: 44.5 }, 4.3)).toEqual([36, 38, 40, 42, 44]);
    expect(valueTicks({ low: 5, high: 5 }, 4)).toEqual([5]);
  });

  test('a scale maps the ends of its domain to the ends of its range', () => {
    const y = linearScale({ low: 30, high: 50 }, 200, 0);
    expect([y(30), y(40), y(50)]).toEqual([200, 100, 0]);
  });

  test('a line is broken at every unknown value', () => {
    const path = linePath({ times: [0, 10, 20, 30], values: [1, 2, null, 4] }, same, same);
    expect(path).toBe('M0 1l10 1M30 4');
  });

  test('rounding never adds up along a line', () => {
    const times = Array.from({ length: 1000 }, (_, i) => i * 0.3333);
    const path = linePath({ times, values: times.map((_, i) => i % 2) }, same, same);
    const across = [...path.matchAll(/l([\d.]+?)[ -][\d.]+/g)].reduce(
      (sum, [, step]) => sum + Number(step),
      0,
    );
    expect(across).toBeCloseTo(times.at(-1)!, 0);
  });

  test('a level run is drawn as one', () => {
    const path = linePath({ times: [0, 1, 2, 3, 4], values: [5, 5, 5, 5, 7] }, same, same);
    expect(path).toBe('M0 5h3l1 2');
  });

  test('a band is closed piece by piece', () => {
    const path = bandPath([0, 1, 2, 3, 4], [0, 0, null, 0, 0], [1, 1, null, 1, 1], same, same);
    expect(path.match(/z/g)).toHaveLength(2);
  });

  test('labels that would overlap are moved apart, order and bounds kept', () => {
    const labels = [90, 92, 91, 199].map((y, index) => ({ text: String(index), y, name: '' }));
    const placed = spreadLabels(labels, 200, 14);
    expect(placed.map(({ text }) => text)).toEqual(['0', '2', '1', '3']);
    placed.slice(1).forEach(({ y }, index) => {
      expect(y - placed[index]!.y).toBeGreaterThanOrEqual(13.99);
    });
    expect(placed.at(-1)!.y).toBeLessThanOrEqual(200);
  });

  test('a point is named without its circuit and its unit, and long names keep both ends', () => {
    expect(shortPointName('M01 air B', 'M01')).toBe('air B');
    expect(shortPointName('M01 air B (°F)', 'M01')).toBe('air B');
    expect(shortPointName('M01', 'M01')).toBe('M01');
    expect([...shortPointName('Dairy wall, far left discharge air 12', 'M01')].length).toBeLessThanOrEqual(
      18,
    );
  });
});
