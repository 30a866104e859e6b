import { expect, test } from 'vitest';
import { commonStops } from '../../src/analyses/rack-pressure/common-stops.ts';
import type { SuctionGroup } from '../../src/model/log.ts';
import { gridOf, handMadeLog, recordOf, valuesOf } from '../support/hand-made-log.ts';
import { psig } from './support/rack-case.ts';

/** Machines that run from minute 10 of each hour until the suction is down to where they are taken off, or cut out as one. */
function stopsOf(lowest: number, offAt: readonly number[], stepMinutes = 1): number {
  const grid = gridOf(2, stepMinutes);
  const gauge = (minute: number) => 48 - ((48 - lowest) * (minute % 60)) / 60;
  const group = {
    pressure: recordOf(
      'S1 suction',
      'pressure',
      valuesOf(grid, (minute) => psig(gauge(minute))),
    ),
    pressureSetPoint: psig(45),
    compressors: offAt.map((off) =>
      recordOf(
        `comp ${off}`,
        'status',
        valuesOf(grid, (minute) => (minute % 60 >= 10 && gauge(minute) > off ? 1 : 0)),
      ),
    ),
  };
  const log = handMadeLog({ days: 2, stepMinutes, circuits: [] });
  return commonStops(group as unknown as SuctionGroup, psig(45), log).length;
}

test('machines that all stop between two readings well under the target were cut out', () => {
  expect(stopsOf(33, [0, 0, 0])).toBe(47);
});

test.each([
  ['one by one', 33, [40, 38, 36], 1],
  ['at once about the target', 43, [0, 0, 0], 1],
  ['between readings five minutes apart', 33, [0, 0, 0], 5],
  ['where there is one of them', 33, [0], 1],
] as const)('not those that stop %s', (_, lowest, offAt, stepMinutes) => {
  expect(stopsOf(lowest, offAt, stepMinutes)).toBe(0);
});
