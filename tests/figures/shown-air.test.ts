import { expect, test } from 'vitest';
import { shownAir } from '../../src/figures/shown-air.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { gridOf, handMadeLog } from '../support/hand-made-log.ts';
import { simpleCase } from '../support/simple-case.ts';

test('a day spent off shows the air as it was then, the other days their settled air', () => {
  const grid = gridOf(6, 5);
  const isOff = (minute: number): boolean => minute >= 3.4 * 1440 && minute < 5 * 1440;
  const [own] = computeSignals(
    handMadeLog({ days: 6, stepMinutes: 5, circuits: [simpleCase(grid, { isOff, shop: 22 })] }),
  ).circuits;
  const air = shownAir(own!, 0);
  for (const day of [0, 1, 2, 5]) expect(air[day]).toBe(own!.probes[0]!.median[day]);
  expect(own!.probes[0]!.median[4]).toBeNaN();
  expect(air[4]).toBeGreaterThan(20);
  expect(air[3]).toBeGreaterThan(10);
});
