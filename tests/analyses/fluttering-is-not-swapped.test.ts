import { expect, test } from 'vitest';
import { analyse } from '../../src/analyses/probe-disagreement/index.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { gridOf, handMadeLog } from '../support/hand-made-log.ts';
import { dailyDefrosts, simpleCase } from '../support/simple-case.ts';

test('a probe that flutters is not taken for one of another circuit, in whose defrosts its scatter rises too', () => {
  const grid = gridOf(16, 1);
  const jumps = (minute: number, probe: number) =>
    probe === 0 && minute > 8 * 1440 ? 8 * Math.sin(minute * 2.1) * Math.sin(minute * 0.77) : 0;
  const signals = computeSignals(
    handMadeLog({
      days: 16,
      stepMinutes: 1,
      circuits: [
        simpleCase(grid, { id: 'M01', offset: jumps, isDefrosting: dailyDefrosts([0, 360, 720, 1080], 30) }),
        simpleCase(grid, { id: 'M02', seed: 2, isDefrosting: dailyDefrosts([120, 480, 840, 1200], 30) }),
      ],
    }),
  );
  const { evidence } = analyse(signals.circuits[0]!, null, signals);
  expect(evidence.map(({ shape }) => shape)).not.toContain('swapped');
  expect(evidence.map(({ shape }) => shape)).toContain('flutter');
});
