import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { alarmInForce, usualAlarm } from '../../src/alarm-replay/alarm-rule.ts';
import { leadOver } from '../../src/alarm-replay/lead.ts';
import { replayAlarm } from '../../src/alarm-replay/replay.ts';
import { replayOnCircuit } from '../../src/alarm-replay/replay-circuit.ts';
import { suggestLimits } from '../../src/alarm-replay/suggest-limit.ts';
import { sustainedLevels } from '../../src/alarm-replay/sustained-level.ts';
import { hiddenByAverage } from '../../src/alarm-replay/why-hidden.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { finding } from '../reporting/support/example.ts';
import { gridOf, handMadeLog, startOfHistory } from '../support/hand-made-log.ts';
import { simpleCase } from '../support/simple-case.ts';

const day = 86_400_000;
const days = 14;
const grid = gridOf(days, 5);

/** One end creeps up by half a kelvin a day from the sixth day on; the controller steers on the average. */
const creeping = {
  ...simpleCase(grid, {
    offset: (minute, probe) => (probe === 0 ? Math.max(0, (minute / 1440 - 5) * 0.5) : 0),
  }),
  limits: { high: 20 / 3, minutes: 60 },
};
const log = handMadeLog({ days, stepMinutes: 5, circuits: [creeping] });
const signals = computeSignals(log).circuits[0]!;
const creep = finding(log, { probe: 'M01 air A', onset: startOfHistory + 5 * day });

describe('the alarm in force, replayed on a circuit whose one end creeps up', () => {
  const { rule, source } = alarmInForce(creeping, 2.8)!;
  const onAverage = replayOnCircuit(signals, rule);

  test('on the average, as the site file gives it, never comes', () => {
    expect({ source, input: rule.input }).toEqual({ source: 'site', input: 'average' });
    expect(onAverage.firstTrip).toBeNull();
    expect(leadOver(onAverage, creep, log)).toMatchObject({ order: 'never', days: 9 });
  });

  test('is blind for four defrosts and half an hour after each: 5 h a day', () => {
    expect(onAverage.blindMinutesADay).toBeCloseTo(4 * (45 + 30), 0);
  });

  test('says in figures why: the warm end far above, the average at its set point', () => {
    const hidden = hiddenByAverage(signals, creep, rule)!;
    expect(hidden.date).toBe('2026-09-14');
    expect(hidden.probeLevel - hidden.average).toBeGreaterThan(2);
    expect(hidden.average).toBeCloseTo(2.8, 0);
    expect(Math.max(...hidden.others)).toBeLessThan(hidden.average);
  });

  test('on the warmest probe comes, and how many days after the onset is said', () => {
    const onWarmest = replayOnCircuit(signals, { ...rule, limit: 5, input: 'warmest' });
    const lead = leadOver(onWarmest, creep, log);
    expect(lead.order).toBe('alarm-later');
    expect(lead.days).toBeGreaterThan(2);
  });

  test('that was first says so', () => {
    const tight = replayOnCircuit(signals, {
      ...rule,
      limit: 2,
      delayMinutes: 0,
      input: { probe: 'M01 air A' },
    });
    expect(leadOver(tight, creep, log)).toMatchObject({ order: 'alarm-first' });
  });

  test('without limits of the site a usual one stands in, and says so', () => {
    expect(alarmInForce({ ...creeping, limits: null }, 2.8)).toMatchObject({
      source: 'common-practice',
      rule: { ...usualAlarm, delayMinutes: 60 },
    });
    expect(alarmInForce({ ...creeping, limits: null }, Number.NaN)).toBeNull();
  });
});

describe('a limit for each probe from its quiet days', () => {
  const quiet = log.calendar.days.map((_, d) => d < 8);
  const suggestions = suggestLimits(
    signals,
    log.calendar.days.map((_, d) => d < 5 || d < 7),
  );

  test('stands just above what the air held, in half degrees of the site', () => {
    const [, second] = suggestions;
    expect((second!.limit * 1.8 + 32) % 0.5).toBeCloseTo(0, 6);
    expect(second!.limit).toBeGreaterThan(2.8);
    expect(second!.limit).toBeLessThan(2.8 + 2.5);
  });

  test('its nuisance rate is what a replay on those days gives', () => {
    for (const [k, one] of suggestLimits(signals, quiet).entries()) {
      const history = replayOnCircuit(signals, {
        limit: one!.limit,
        delayMinutes: one!.delayMinutes,
        lockOutAfterMinutes: one!.lockOutAfterMinutes,
        hysteresis: 0,
        timerInLockOut: 'reset',
        input: { probe: signals.circuit.probes[k]!.point },
      });
      const tripDays = new Set(
        history.trips.map(({ from }) =>
          log.calendar.days.findIndex((each) => from >= each.from && from < each.to),
        ),
      );
      expect([...tripDays].filter((d) => quiet[d])).toHaveLength(one!.nuisanceDays);
      expect(one!.aMonth.high).toBeGreaterThan(one!.aMonth.expected);
    }
  });

  test('the circuit that then creeps trips it, the quiet probes do not', () => {
    const [first] = suggestions;
    const history = replayOnCircuit(signals, {
      ...usualAlarm,
      limit: first!.limit,
      delayMinutes: 30,
      input: { probe: 'M01 air A' },
    });
    expect(leadOver(history, creep, log).order).toBe('alarm-later');
  });

  test('is not drawn from fewer than a week of quiet days', () => {
    expect(
      suggestLimits(
        signals,
        log.calendar.days.map((_, d) => d < 6),
      ),
    ).toEqual([null, null, null]);
  });
});

test('the sustained level is the limit at which the replayed alarm just does not come, on random histories', () => {
  const reading = fc.oneof(
    { weight: 8, arbitrary: fc.integer({ min: 0, max: 9 }) },
    { weight: 1, arbitrary: fc.constant(Number.NaN) },
  );
  fc.assert(
    fc.property(
      fc.array(reading, { minLength: 5, maxLength: 150 }),
      fc.integer({ min: 0, max: 8 }),
      fc.nat(),
      (list, delay, seed) => {
        const values = Float64Array.from(list);
        const locked = Uint8Array.from(list, (_, i) => Number((i * 7 + seed) % 23 < 3));
        const calendar = {
          timeZone: 'UTC',
          offsets: [],
          days: [{ date: '', weekday: 0, from: 0, to: list.length, hours: 24 }],
        };
        const [held] = sustainedLevels(values, locked, delay, calendar);
        const tripsAt = (limit: number) =>
          replayAlarm(
            values,
            locked,
            { limit, delayMinutes: delay, hysteresis: 0, timerInLockOut: 'reset' },
            1,
          ).trips.length > 0;
        if (Number.isNaN(held!)) expect(tripsAt(-1)).toBe(false);
        else {
          expect(tripsAt(held!)).toBe(false);
          expect(tripsAt(held! - 0.5)).toBe(true);
        }
      },
    ),
    { numRuns: 1000 },
  );
});
