import { describe, expect, test } from 'vitest';
import { circuitFigures, figureKey } from '../../src/figures/circuit-figures.ts';
import { blockTitle, clockBlocks } from '../../src/figures/clock-blocks.ts';
import type { Figure } from '../../src/figures/figure.ts';
import { median } from '../../src/maths/median.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { circuitOf, gridOf, handMadeLog, recordOf, valuesOf } from '../support/hand-made-log.ts';
import { simpleCase } from '../support/simple-case.ts';

const byKey = (figures: readonly Figure[], key: string) =>
  figures.find((figure) => figureKey(figure) === key)!;

describe('figures by block of the clock', () => {
  test('six blocks a day on the site clock; the repeated hour falls into the block it shows', () => {
    const log = handMadeLog({ days: 3, clockBackOnDay: 1 });
    const blocks = clockBlocks(log).of;
    const samples = (block: number) => blocks.filter((each) => each === block).length;
    expect([0, 1, 2, 3, 4, 5].map(samples)).toEqual(Array.from({ length: 6 }, () => 240));
    expect(samples(6)).toBe(300);
    expect(blockTitle(2)).toBe('08–12 h');
  });

  test('level, spread and offsets of readings that are known', () => {
    const grid = gridOf(2);
    const readings = [41, 30, 31].map((level, i) =>
      recordOf(
        `M01 air ${'ABC'[i]}`,
        'temperature',
        valuesOf(grid, (minute) => level + 0.1 * (minute % 2)),
      ),
    );
    const circuit = circuitOf({ probes: readings, setPoint: 33.5 });
    const log = handMadeLog({ days: 2, circuits: [circuit] });
    const figures = circuitFigures(computeSignals(log).circuits[0]!, clockBlocks(log));
    const value = (key: string) => median(byKey(figures, key).values);
    expect(value('level')).toBeCloseTo(34.05 - 33.5, 9);
    expect(value('spread')).toBeCloseTo(11, 9);
    expect(value('offset M01 air A')).toBeCloseTo(10.5, 9);
    expect(value('offset M01 air B')).toBeCloseTo(-6, 9);
  });

  test('of a cycling case: duty, openings and recovery are those of the valve and the defrosts', () => {
    const log = handMadeLog({ days: 4, circuits: [simpleCase(gridOf(4))] });
    const signals = computeSignals(log).circuits[0]!;
    const figures = circuitFigures(signals, clockBlocks(log));
    const { values } = signals.circuit.valve!;
    let fed = 0;
    let starts = 0;
    let settled = 0;
    signals.phase.forEach((phase, i) => {
      if (phase !== 1) return;
      settled++;
      fed += values[i]!;
      if (i > 0 && values[i]! > values[i - 1]!) starts++;
    });
    expect(median(byKey(figures, 'duty').values)).toBeCloseTo(fed / settled, 1);
    expect(median(byKey(figures, 'valve-starts').values)).toBeCloseTo((60 * starts) / settled, 0);
    expect(median(byKey(figures, 'recovery').values)).toBeGreaterThan(0);
    expect(byKey(figures, 'recovery').values.filter((value) => !Number.isNaN(value))).toHaveLength(16);
  });
});
