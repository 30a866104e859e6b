import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { replayAlarm } from '../../src/alarm-replay/replay.ts';
import { naiveTrips } from './naive-twin.ts';

const rule = { limit: 5, delayMinutes: 10, hysteresis: 1, timerInLockOut: 'reset' } as const;
const noLockOut = (values: ArrayLike<number>) => new Uint8Array(values.length);
const run = (length: number, value: number) => Array.from({ length }, () => value);

describe('the replayed alarm, by hand', () => {
  test('comes when the delay is up, counted from the first reading above the limit', () => {
    const values = Float64Array.from([...run(5, 4), ...run(30, 6), ...run(5, 4)]);
    expect(replayAlarm(values, noLockOut(values), rule, 1).trips).toEqual([{ from: 15, to: 35 }]);
  });

  test('one reading at the limit starts the delay from nothing', () => {
    const values = Float64Array.from([...run(9, 6), 5, ...run(9, 6), 4]);
    expect(replayAlarm(values, noLockOut(values), rule, 1).trips).toEqual([]);
  });

  test('stays until the air is down by the hysteresis', () => {
    const values = Float64Array.from([...run(11, 6), ...run(10, 4.5), 4, 6]);
    expect(replayAlarm(values, noLockOut(values), rule, 1).trips).toEqual([{ from: 10, to: 21 }]);
  });

  test('stands at the end without an end', () => {
    const values = Float64Array.from(run(40, 6));
    expect(replayAlarm(values, noLockOut(values), rule, 1).trips).toEqual([{ from: 10, to: null }]);
  });

  test('a lock-out in the middle of the delay clears it, or only stops it', () => {
    const values = Float64Array.from(run(30, 6));
    const locked = noLockOut(values).fill(1, 8, 14);
    const trip = (timerInLockOut: 'paused' | 'reset') =>
      replayAlarm(values, locked, { ...rule, timerInLockOut }, 1).trips[0]!.from;
    expect(trip('reset')).toBe(24);
    expect(trip('paused')).toBe(16);
  });

  test('counts the samples at which it could not have come: four defrosts of 40 min and an hour after are 28 % of a day', () => {
    const values = Float64Array.from(run(1440, 4));
    const locked = noLockOut(values);
    for (const start of [0, 360, 720, 1080]) locked.fill(1, start, start + 100);
    expect(replayAlarm(values, locked, rule, 1).blindSamples / 1440).toBeCloseTo(0.28, 2);
  });
});

test('says the same as a naive minute-by-minute twin, on random histories and random alarms', () => {
  const reading = fc.oneof(
    { weight: 8, arbitrary: fc.integer({ min: 0, max: 9 }) },
    { weight: 1, arbitrary: fc.constant(Number.NaN) },
  );
  const stretch = fc.record({
    value: reading,
    locked: fc.integer({ min: 0, max: 5 }),
    length: fc.integer({ min: 1, max: 12 }),
  });
  const alarm = fc.record({
    limit: fc.integer({ min: 2, max: 7 }),
    delayMinutes: fc.integer({ min: 0, max: 15 }),
    hysteresis: fc.integer({ min: 0, max: 3 }),
    timerInLockOut: fc.constantFrom('paused' as const, 'reset' as const),
  });
  fc.assert(
    fc.property(fc.array(stretch, { maxLength: 60 }), alarm, (stretches, rule) => {
      const history = stretches.flatMap(({ value, locked, length }) =>
        Array.from({ length }, () => ({ value, locked: locked === 0 })),
      );
      const values = Float64Array.from(history, ({ value }) => value);
      const locked = Uint8Array.from(history, (minute) => Number(minute.locked));
      const { trips, blindSamples } = replayAlarm(values, locked, rule, 1);
      expect(trips).toEqual(naiveTrips(history, rule));
      expect(blindSamples).toBe(
        history.filter((minute) => minute.locked || Number.isNaN(minute.value)).length,
      );
    }),
    { numRuns: 2000 },
  );
});
