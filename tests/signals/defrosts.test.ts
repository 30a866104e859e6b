import { describe, expect, test } from 'vitest';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { defrostsFromShape } from '../../src/signals/defrost/from-shape.ts';
import type { CircuitSignals } from '../../src/signals/types.ts';
import { gridOf, handMadeLog } from '../support/hand-made-log.ts';
import { dailyDefrosts, type SimpleCase, simpleCase } from '../support/simple-case.ts';

const days = 12;
function signalsOf(options: SimpleCase = {}, stepMinutes = 1): CircuitSignals {
  const grid = gridOf(days, stepMinutes);
  const log = handMadeLog({ days, stepMinutes, circuits: [simpleCase(grid, options)] });
  return computeSignals(log).circuits[0]!;
}
const minuteSpans = (signals: CircuitSignals, stepMinutes = 1) =>
  signals.defrosts.map(({ from, to }) => [from * stepMinutes, to * stepMinutes]);
const planned = Array.from({ length: days }, (_, day) =>
  [120, 480, 840, 1200].map((minute) => [day * 1440 + minute, day * 1440 + minute + 45]),
).flat();

/** A produce line-up with four off-cycle defrosts a day of 45 minutes: common practice, no source. */
describe('defrosts of a produce line-up', () => {
  test('are those of the status, to the minute', () => {
    const signals = signalsOf();
    expect(signals.defrostSource).toBe('status');
    expect(minuteSpans(signals)).toEqual(planned);
    expect(signals.slots.map((slot) => slot.minute)).toEqual([120, 480, 840, 1200]);
  });

  test('are found all the same when the status means cooling by its 1', () => {
    const grid = gridOf(days);
    const circuit = simpleCase(grid);
    const status = circuit.defrost.status!;
    const inverted = { ...status, values: status.values.map((value) => 1 - value) };
    const log = handMadeLog({
      days,
      circuits: [{ ...circuit, defrost: { ...circuit.defrost, status: inverted } }],
    });
    expect(minuteSpans(computeSignals(log).circuits[0]!)).toEqual(planned);
  });

  test('a status that flickers makes one defrost, one that is stuck makes none', () => {
    const grid = gridOf(days);
    const circuit = simpleCase(grid);
    const values = Float64Array.from(circuit.defrost.status!.values);
    values[130] = 0;
    values.fill(1, 5 * 1440 + 700, 6 * 1440 + 600);
    const status = { ...circuit.defrost.status!, values };
    const log = handMadeLog({ days, circuits: [{ ...circuit, defrost: { ...circuit.defrost, status } }] });
    const signals = computeSignals(log).circuits[0]!;
    expect(minuteSpans(signals)[0]).toEqual([120, 165]);
    expect(signals.defrosts.every(({ from, to }) => to - from < 120)).toBe(true);
    const standIns = signals.defrosts.filter((window) => window.source === 'shape');
    expect(standIns.length).toBeGreaterThanOrEqual(3);
  });

  test.each([
    [1, 0.1 / 1.8],
    [5, 0.1 / 1.8],
    [5, 1 / 1.8],
  ])('are told from the air alone, read every %d min in steps of %f K', (stepMinutes, stepCelsius) => {
    const signals = signalsOf({ columns: {}, stepCelsius }, stepMinutes);
    expect(signals.defrostSource).toBe('shape');
    const spans = minuteSpans(signals, stepMinutes);
    expect(spans).toHaveLength(planned.length);
    spans.forEach(([from, to], i) => {
      expect(Math.abs(from! - planned[i]![0]!)).toBeLessThanOrEqual(12);
      expect(Math.abs(to! - planned[i]![1]!)).toBeLessThanOrEqual(10);
    });
  });

  test('end where the valve opens again when it is logged', () => {
    const spans = minuteSpans(signalsOf({ columns: { valve: true } }));
    expect(spans).toHaveLength(planned.length);
    for (const [i, [, to]] of spans.entries()) expect(Math.abs(to! - planned[i]![1]!)).toBeLessThanOrEqual(3);
  });

  test('short hot-gas defrosts with small peaks are told from the air as well', () => {
    const isDefrosting = dailyDefrosts([100, 460, 820, 1180], 18);
    const signals = signalsOf({ columns: {}, isDefrosting });
    expect(signals.slots).toHaveLength(4);
    expect(signals.defrosts.length).toBeGreaterThanOrEqual(4 * days - 2);
  });

  test('hot gas that lifts the air steeply makes one defrost each, not one more on every way down', () => {
    const isDefrosting = dailyDefrosts([100, 460, 820, 1180], 14);
    const load = (minute: number) => (isDefrosting(minute) ? 0.035 : 0.008);
    const { defrosts } = signalsOf({ columns: { valve: true }, isDefrosting, load, cooling: () => 0.5 });
    expect(defrosts).toHaveLength(4 * days);
    for (const [i, window] of defrosts.slice(1).entries())
      expect(window.from).toBeGreaterThan(defrosts[i]!.to);
  });

  test('whose air crept up before some of them began when the others did', () => {
    const isDefrosting = dailyDefrosts([140, 620, 1100], 15);
    const creeps = (minute: number) => minute < 5 * 1440 && minute % 1440 >= 560 && minute % 1440 < 620;
    const air = Float64Array.from({ length: (days * 1440) / 5 }, (_, i) => {
      const minute = i * 5;
      const since = [1100, 620, 140].find((start) => isDefrosting(minute) && minute % 1440 >= start);
      if (since !== undefined) return 0.6 * ((minute % 1440) - since);
      if (creeps(minute)) return -2.5 + ((minute % 1440) - 560) / 24;
      return i % 2 === 0 ? -0.4 : 0.3;
    });
    const { grid, calendar } = handMadeLog({ days, stepMinutes: 5, circuits: [] });
    const starts = defrostsFromShape(air, grid, calendar).map(({ from }) => (from * 5) % 1440);
    expect(starts).toHaveLength(3 * days);
    for (const start of starts)
      expect(Math.min(...[140, 620, 1100].map((due) => Math.abs(start - due)))).toBeLessThanOrEqual(20);
  });

  // A defrost of more than twice the usual height on one day; the valve's next cycle overshoots, and looks like a usual defrost.
  test.each([
    ['soon after one of twice its height is the cycle on the way back', 15, 0],
    ['hours after it is a defrost of its own', 180, 1],
  ])('a single climb %s', (_, later, more) => {
    const starts = [120, 480, 840, 1200];
    const climbAt = (minute: number, start: number, height: number) => {
      const since = minute - start;
      return since >= 0 && since < 45 ? (height * since) / 45 : 0;
    };
    const air = Float64Array.from({ length: (days * 1440) / 5 }, (_, i) => {
      const minute = i * 5;
      const heavy = Math.floor(minute / 1440) === 5;
      const own = starts.map((start) => climbAt(minute % 1440, start, heavy && start === 480 ? 11.5 : 4.8));
      const echo = heavy ? climbAt(minute % 1440, 525 + later, 4) : 0;
      return 2 + (i % 2 === 0 ? 0.2 : -0.2) + Math.max(echo, ...own);
    });
    const { grid, calendar } = handMadeLog({ days, stepMinutes: 5, circuits: [] });
    expect(defrostsFromShape(air, grid, calendar)).toHaveLength(4 * days + more);
  });

  test('a small climb at a time that the schedule has left is none, and brings that time not back', () => {
    const moved = 7;
    const small = (minute: number) =>
      Math.floor(minute / 1440) === moved + 4 && minute % 1440 >= 480 && minute % 1440 < 510;
    const air = Float64Array.from({ length: (days * 1440) / 5 }, (_, i) => {
      const minute = i * 5;
      const late = minute >= moved * 1440 ? 60 : 0;
      const since = [480, 1200].map((start) => (minute % 1440) - start - late).find((m) => m >= 0 && m < 45);
      if (since !== undefined) return 2 + since / 6;
      if (small(minute)) return 2 + ((minute % 1440) - 480) / 15;
      return 2 + (i % 2 === 0 ? 0.2 : -0.2);
    });
    const { grid, calendar } = handMadeLog({ days, stepMinutes: 5, circuits: [] });
    expect(defrostsFromShape(air, grid, calendar)).toHaveLength(2 * days);
  });

  test('that are weak when they show again, as those of an iced coil do after days on which none showed, are defrosts', () => {
    const air = Float64Array.from({ length: (days * 1440) / 5 }, (_, i) => {
      const minute = i * 5;
      const today = Math.floor(minute / 1440);
      const height = today < 6 ? 7 : today < 9 ? 0 : 2.4;
      const since = [480, 1200].map((start) => (minute % 1440) - start).find((m) => m >= 0 && m < 45);
      return since === undefined ? 2 + (i % 2 === 0 ? 0.2 : -0.2) : 2 + (height * since) / 45;
    });
    const { grid, calendar } = handMadeLog({ days, stepMinutes: 5, circuits: [] });
    expect(defrostsFromShape(air, grid, calendar)).toHaveLength(2 * 6 + 2 * 3);
  });

  test('a case without defrosts has none, and a load that comes and goes makes none', () => {
    expect(signalsOf({ columns: {}, isDefrosting: () => false }).defrosts).toEqual([]);
    const stocked = [3 * 1440 + 600, 5 * 1440 + 900, 8 * 1440 + 700];
    const load = (minute: number) => (stocked.some((at) => minute >= at && minute < at + 40) ? 0.03 : 0.008);
    expect(signalsOf({ columns: {}, isDefrosting: () => false, load }).defrosts).toEqual([]);
  });

  test('starts of the site file are taken where the air follows them, and left where it does not', () => {
    const withStarts = (starts: readonly number[]) => {
      const grid = gridOf(days);
      const circuit = simpleCase(grid, { columns: {} });
      const defrost = { ...circuit.defrost, starts, minutes: 45 };
      return computeSignals(handMadeLog({ days, circuits: [{ ...circuit, defrost }] })).circuits[0]!;
    };
    const followed = withStarts([120, 480, 840, 1200]);
    expect(followed.defrostSource).toBe('schedule');
    expect(minuteSpans(followed)).toEqual(planned);
    expect(withStarts([300, 660, 1020, 1380]).defrostSource).toBe('shape');
  });
});

describe('one defrost', () => {
  test('has its level before, its peak, its level late and the way back for every probe', () => {
    const { probes } = signalsOf().defrosts[6]!;
    expect(probes).toHaveLength(3);
    for (const probe of probes) {
      expect(probe.before).toBeGreaterThan(2.2);
      expect(probe.before).toBeLessThan(3.4);
      expect(probe.peak).toBeGreaterThan(probe.late);
      expect(probe.peak).toBeGreaterThan(8);
      expect(probe.recoveryMinutes).toBeGreaterThan(15);
      expect(probe.recoveryMinutes).toBeLessThan(45);
      expect(probe.watchedMinutes).toBe(probe.recoveryMinutes);
    }
  });

  test('from which the air does not come back is censored at the next one', () => {
    const { defrosts } = signalsOf({ cooling: (minute) => (minute > 6 * 1440 ? 0.13 : 0.35) });
    const last = defrosts.at(-3)!.probes[0]!;
    expect(last.recoveryMinutes).toBeNull();
    expect(last.watchedMinutes).toBe(360 - 45);
  });

  test('counts the minutes near the melting point', () => {
    const signals = signalsOf({ setPoint: () => -4 });
    expect(signals.defrosts[5]!.probes[0]!.plateauMinutes).toBeGreaterThan(2);
    expect(signalsOf().defrosts[5]!.probes[0]!.plateauMinutes).toBe(0);
  });
});

describe('defrosts that did not come', () => {
  const daily = dailyDefrosts([120, 480, 840, 1200], 45);
  const without = (minute: number) => !(minute >= 7 * 1440 && minute % 1440 > 400 && minute % 1440 < 600);
  test.each([
    ['by the status', { valve: true, status: true, setPoint: true }],
    ['by the air', {}],
  ])('are missed %s, each at its time', (_, columns) => {
    const signals = signalsOf({ columns, isDefrosting: (minute) => daily(minute) && without(minute) });
    const missed = signals.slots.flatMap((slot) => slot.missed);
    expect(missed).toHaveLength(5);
    for (const sample of missed) expect(Math.abs((sample % 1440) - 480)).toBeLessThanOrEqual(12);
  });

  test('a schedule that moved has missed none', () => {
    const early = dailyDefrosts([120, 480, 840, 1200], 45);
    const late = dailyDefrosts([60, 420, 780, 1140], 45);
    const signals = signalsOf({
      isDefrosting: (minute) => (minute < 6 * 1440 ? early(minute) : late(minute)),
    });
    expect(signals.slots.flatMap((slot) => slot.missed).length).toBeLessThanOrEqual(1);
  });

  test('a gap in the record hides them and nothing is called missed', () => {
    const grid = gridOf(days);
    const circuit = simpleCase(grid);
    const cut = (values: Float64Array) => Float64Array.from(values).fill(Number.NaN, 4 * 1440, 6 * 1440);
    const gappy = {
      ...circuit,
      valve: { ...circuit.valve!, values: cut(circuit.valve!.values) },
      probes: circuit.probes.map((probe) => ({
        ...probe,
        record: { ...probe.record, values: cut(probe.record.values) },
      })),
      defrost: {
        ...circuit.defrost,
        status: { ...circuit.defrost.status!, values: cut(circuit.defrost.status!.values) },
      },
    };
    const signals = computeSignals(handMadeLog({ days, circuits: [gappy] })).circuits[0]!;
    expect(signals.slots.flatMap((slot) => slot.missed)).toEqual([]);
  });
});
