import { describe, expect, test } from 'vitest';
import { timeAt } from '../../src/model/grid.ts';
import { figureAtEnd } from '../../src/norms/at-end.ts';
import { learnNorms } from '../../src/norms/learn-norms.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { gridOf, handMadeLog } from '../support/hand-made-log.ts';
import { simpleCase } from '../support/simple-case.ts';

const days = 8;

function normsOf(isOff: (minute: number) => boolean) {
  const grid = gridOf(days, 5);
  const signals = computeSignals(
    handMadeLog({ days, stepMinutes: 5, circuits: [simpleCase(grid, { isOff })] }),
  );
  const norms = learnNorms(signals, []);
  const named = (wanted: string) => norms.find(({ id }) => id === wanted)!;
  return { named, log: signals.log };
}

describe('what a figure shows at the end', () => {
  test('is its last value, held against what is usual', () => {
    const { named, log } = normsOf(() => false);
    for (const id of ['level', 'air', 'duty', 'recovery']) {
      const end = figureAtEnd(named(id), log);
      expect(end).toMatchObject({ verdict: { side: expect.any(String) } });
      expect('value' in end && end.value).toBe(named(id).values.findLast((value) => !Number.isNaN(value)));
    }
  });

  test('is not the last value of a circuit that has stood off for hours', () => {
    const { named, log } = normsOf((minute) => minute >= (days - 1) * 1440);
    for (const id of ['level', 'air', 'duty']) {
      const end = figureAtEnd(named(id), log);
      expect(end).toEqual({ lastKnown: expect.any(Number) });
      const day = timeAt(log.grid, log.calendar.days[days - 2]!.from);
      expect('lastKnown' in end && end.lastKnown! - day).toBe(20 * 3_600_000);
    }
  });
});
