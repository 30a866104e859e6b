import { describe, expect, test } from 'vitest';
import { levelChange } from '../../src/analyses/defrost-recovery/change.ts';
import { analyse } from '../../src/analyses/defrost-recovery/index.ts';
import { lengthening } from '../../src/analyses/defrost-recovery/lengthening.ts';
import { noneAnyMore } from '../../src/analyses/defrost-recovery/none-any-more.ts';
import type { Evidence } from '../../src/model/evidence.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import type { CircuitSignals } from '../../src/signals/types.ts';
import { dayOfOnset, measureOf, shapesOf, verdictOf } from '../support/analyse-case.ts';
import { gridOf, handMadeLog, recordOf } from '../support/hand-made-log.ts';
import { dailyDefrosts, produceDefrosts, type SimpleCase, simpleCase } from '../support/simple-case.ts';

const days = 20;
const day = (minute: number) => minute / 1440;
const judge = (options: SimpleCase = {}, stepMinutes = 1) =>
  verdictOf(analyse, [simpleCase(gridOf(days, stepMinutes), options)], days, stepMinutes);

describe('a healthy line-up', () => {
  // A produce line-up at 37 °F with a 2 °F dead band, off-cycle defrost four times a day for 45 minutes: common
  // practice, no source.
  test.each([1, 5])('is silent, read every %d min', (stepMinutes) => {
    expect(judge({}, stepMinutes).evidence).toEqual([]);
  });
  test('is silent without a status as well', () => {
    expect(judge({ columns: { setPoint: true } }).evidence).toEqual([]);
  });
  test('is silent when its set point is raised, and when a busy day slows one recovery', () => {
    expect(judge({ setPoint: (minute) => (day(minute) < 10 ? 2.8 : 4.5) }).evidence).toEqual([]);
    const load = (minute: number) => (Math.floor(day(minute)) === 12 ? 0.012 : 0.008);
    expect(judge({ load }).evidence).toEqual([]);
  });
});

describe('defrosts that no longer come, with no status logged', () => {
  const piece = (shape: string, onset: number, riseRatio: number) =>
    ({
      shape,
      onset,
      end: null,
      certainty: 0.8,
      measures: [],
      features: { riseRatio },
    }) as unknown as Evidence;
  const inferred = { defrostSource: 'schedule' } as CircuitSignals;
  test('are one thing since the first hour at which the air hardly rose', () => {
    const [one, ...others] = noneAnyMore(inferred, [piece('missed', 5, 1), piece('weak-rise', 2, 0.1)]);
    expect(others).toEqual([]);
    expect(one).toMatchObject({ shape: 'missed', onset: 2, features: { allSince: 1, riseRatio: 0.1 } });
  });
  test.each([
    ['that still rise by a third', inferred, piece('weak-rise', 2, 0.35)],
    ['that weakened after some were missed', inferred, piece('weak-rise', 8, 0.1)],
    ['whose status is logged', { defrostSource: 'status' } as CircuitSignals, piece('weak-rise', 2, 0.1)],
  ])('are kept apart from defrosts %s', (_, signals, weak) => {
    expect(noneAnyMore(signals, [piece('missed', 5, 1), weak])).toHaveLength(2);
  });
});

describe('recovery', () => {
  test('that lengthens day by day is a trend of the whole circuit', () => {
    const cooling = (minute: number) => 0.35 - 0.012 * Math.max(0, day(minute) - 6);
    const { evidence } = judge({ cooling });
    const trend = evidence.find((one) => one.shape === 'lengthening')!;
    expect(trend.probe).toBeNull();
    expect(measureOf(trend, 'recoveryNow')).toBeGreaterThan(1.5 * measureOf(trend, 'recoveryAtStart'));
    expect(Math.abs(dayOfOnset(trend) - 6)).toBeLessThan(4);
    expect(trend.features.trendProbability!).toBeLessThan(0.05);
  });

  test('that lengthens from the first day on has its start at one that was seen', () => {
    const cooling = (minute: number) => 0.36 - 0.011 * day(minute);
    const log = handMadeLog({ days, circuits: [simpleCase(gridOf(days), { cooling })] });
    const signals = computeSignals(log).circuits[0]!;
    const trend = analyse(signals, null).evidence.find((one) => one.shape === 'lengthening')!;
    const seen = signals.defrosts.flatMap(({ probes }) =>
      probes.map((probe) => probe.recoveryMinutes ?? 999),
    );
    expect(measureOf(trend, 'recoveryAtStart')).toBeGreaterThanOrEqual(Math.min(...seen));
  });

  test('that lengthens by one step of the logging is read so, and no trend', () => {
    const log = handMadeLog({ days, stepMinutes: 10, circuits: [simpleCase(gridOf(days, 10))] });
    const signals = computeSignals(log).circuits[0]!;
    const shapes = (...steps: number[]) => {
      const recovery = Float64Array.from(steps, (step) => 10 * step);
      const probes = signals.probes.map((probe) => ({ ...probe, recovery }));
      return lengthening({ ...signals, probes }).map(({ shape }) => shape);
    };
    expect(shapes(0, 0, 1, 0, 0, 0, 1, 1, 0, 1, 1, 1, 2, 1)).toEqual([]);
    expect(shapes(0, 0, 1, 0, 1, 1, 1, 1, 1, 2, 2, 2, 3, 2)).toEqual(['lengthening']);
  });

  test('that is longer from one day on and stays so is told, and not where it was so for some days', () => {
    const spanned = 21;
    const log = handMadeLog({ days: spanned, stepMinutes: 5, circuits: [simpleCase(gridOf(spanned, 5))] });
    const signals = computeSignals(log).circuits[0]!;
    const told = (longer: readonly number[]) => {
      const recovery = Float64Array.from({ length: spanned }, (_, day) => longer[day - 12] ?? 10);
      return lengthening({ ...signals, probes: signals.probes.map((probe) => ({ ...probe, recovery })) });
    };
    const [longer, ...others] = told([15, 20, 25, 22.5, 20, 20, 20, 20, 22.5]);
    expect(others).toEqual([]);
    expect(Math.abs(dayOfOnset(longer!) - 12)).toBeLessThanOrEqual(1);
    expect(longer!.features.trendProbability).toBeGreaterThan(0.05);
    expect(longer!.measures.map(({ name }) => name)).toEqual(['recoveryAtStart', 'recoveryNow']);
    expect(told([15, 20, 25, 22.5, 20])).toEqual([]);
  });

  test('that lengthens at one end names that probe', () => {
    const cooling = (minute: number, probe: number) =>
      probe === 2 ? 0.35 - 0.013 * Math.max(0, day(minute) - 6) : 0.35;
    const { evidence } = judge({ cooling });
    expect(evidence.length).toBeGreaterThan(0);
    expect(evidence.every((one) => one.probe === 'M01 air C')).toBe(true);
  });

  test('that fails before the next defrost is told as failed, with the time it was watched', () => {
    const cooling = (minute: number) => (day(minute) < 12 ? 0.35 : 0.13);
    const { evidence } = judge({ cooling });
    const failed = evidence.find((one) => one.shape === 'not-recovered')!;
    expect(failed.features.failedShare).toBeGreaterThanOrEqual(0.5);
    expect(measureOf(failed, 'recovery')).toBeGreaterThan(120);
    expect(Math.abs(dayOfOnset(failed) - 12)).toBeLessThan(1);
  });
});

describe('heat and end of the defrosts', () => {
  const heated = (strength: (minute: number) => number): SimpleCase => ({
    setPoint: () => -20,
    shop: 20,
    load: (minute) => (electric(minute) ? 0.008 * strength(minute) : 0.004),
    isDefrosting: electric,
  });
  const electric = dailyDefrosts([180, 900], 30);

  test('a heater that fails halves the rise and is told from that day on', () => {
    const { evidence } = judge(heated((minute) => (day(minute) < 11 ? 1 : 0.35)));
    const weak = evidence.find((one) => one.shape === 'weak-rise')!;
    expect(weak.features.riseRatio).toBeLessThan(0.5);
    expect(Math.abs(dayOfOnset(weak) - 11)).toBeLessThan(0.6);
    expect(weak.probe).toBeNull();
  });

  test('a circuit that is merely warmer before its defrosts has no failed heater', () => {
    const cooling = (minute: number) => (day(minute) < 11 ? 0.35 : 0.16);
    expect(shapesOf(judge({ cooling }))).not.toContain('weak-rise');
  });

  test('defrosts that go on to their longest time are extended, by the clock', () => {
    const short = dailyDefrosts([180, 900], 24);
    const long = dailyDefrosts([180, 900], 45);
    const { evidence } = judge({
      isDefrosting: (minute) => (day(minute) < 11 ? short(minute) : long(minute)),
    });
    const extended = evidence.find((one) => one.shape === 'extended')!;
    expect(measureOf(extended, 'defrostLength')).toBe(45);
    expect(measureOf(extended, 'usualDefrostLength')).toBe(24);
    expect(extended.features.endedByTheClock).toBe(1);
  });

  test.each([
    ['less heat', 0.5, 0, 0.75],
    ['a termination that failed', 1, 0.9, 1.1],
  ])('longer ones with %s say how fast the air rose', (_, strength, low, high) => {
    const [short, long] = [dailyDefrosts([180, 900], 24), dailyDefrosts([180, 900], 45)];
    const isDefrosting = (minute: number) => (day(minute) < 11 ? short(minute) : long(minute));
    const load = (minute: number) => {
      if (!isDefrosting(minute)) return 0.004;
      return 0.008 * (day(minute) < 11 ? 1 : strength);
    };
    const { evidence } = judge({ setPoint: () => -20, shop: 20, load, isDefrosting });
    const { heatRateRatio } = evidence.find((one) => one.shape === 'extended')!.features;
    expect(heatRateRatio).toBeGreaterThan(low);
    expect(heatRateRatio).toBeLessThan(high);
  });

  // A coil that melts a minute or two longer in the warm half of the month, seen every 5 minutes.
  test('defrosts that are longer by one reading are as long as they were', () => {
    const cool = dailyDefrosts([180, 900], 14);
    const warm = dailyDefrosts([180, 900], 17);
    const isDefrosting = (minute: number) => (day(minute) < 11 ? cool(minute) : warm(minute));
    expect(judge({ isDefrosting }, 5).evidence).toEqual([]);
  });

  test('defrosts cut short ended early', () => {
    const usual = dailyDefrosts([180, 900], 40);
    const cut = dailyDefrosts([180, 900], 12);
    const { evidence } = judge({
      isDefrosting: (minute) => (day(minute) < 11 ? usual(minute) : cut(minute)),
    });
    expect(shapesOf({ evidence, abstentions: [] })).toContain('ended-early');
  });

  test('defrosts that ended when the coil was warm and now all run to the longest time are told', () => {
    const grid = gridOf(days);
    const lengths = [26, 28, 25, 30, 27, 24];
    const varied = (minute: number) =>
      dailyDefrosts([180, 900], lengths[Math.floor(minute / 720) % 6]!)(minute);
    const longest = dailyDefrosts([180, 900], 30);
    const isDefrosting = (minute: number) => (day(minute) < 11 ? varied(minute) : longest(minute));
    const circuit = simpleCase(grid, { isDefrosting });
    const electric = { ...circuit, defrost: { ...circuit.defrost, kind: 'electric' as const } };
    const { evidence } = verdictOf(analyse, [electric], days);
    expect(evidence.map((one) => one.shape)).toEqual(['by-the-clock']);
    expect(Math.abs(dayOfOnset(evidence[0]!) - 11)).toBeLessThan(0.7);
    expect(evidence[0]!.features.heatRateRatio).toBeCloseTo(1, 1);
    const weaker = (minute: number) => (isDefrosting(minute) && day(minute) >= 11 ? 0.005 : 0.008);
    const weak = { ...simpleCase(grid, { isDefrosting, load: weaker }), defrost: electric.defrost };
    const told = verdictOf(analyse, [weak], days).evidence.find((one) => one.shape === 'by-the-clock')!;
    expect(told.features.heatRateRatio).toBeLessThan(0.75);
  });

  describe('longer by one reading, and warmer from the same one on', () => {
    const [short, long] = [dailyDefrosts([180, 540, 900], 13), dailyDefrosts([180, 540, 900], 18)];
    const isDefrosting = (minute: number) => (day(minute) < 11 ? short(minute) : long(minute));
    const shapesWith = (heat: (minute: number) => number, kind: 'hot-gas' | 'off-cycle', status = true) => {
      const load = (minute: number) => (isDefrosting(minute) ? heat(minute) : 0.008);
      const circuit = simpleCase(gridOf(days, 5), { isDefrosting, load, columns: { valve: status, status } });
      const defrost = { ...circuit.defrost, kind };
      return verdictOf(analyse, [{ ...circuit, defrost }], days, 5).evidence.filter(
        ({ shape }) => shape === 'extended',
      );
    };
    const asEver = () => 0.04;

    test('are heated on by a coil that is heated', () => {
      const [extended, ...others] = shapesWith(asEver, 'hot-gas');
      expect(others).toEqual([]);
      expect(extended).toMatchObject({ shape: 'extended', features: { heatedOn: 1 } });
      expect(Math.abs(dayOfOnset(extended!) - 11)).toBeLessThan(0.6);
    });

    test('are so where neither a status nor a valve tells their length', () => {
      const wide = (minute: number) =>
        (day(minute) < 11 ? dailyDefrosts([180, 540, 900], 20) : dailyDefrosts([180, 540, 900], 30))(minute);
      const load = (minute: number) => (wide(minute) ? 0.04 : 0.008);
      const circuit = simpleCase(gridOf(days), { isDefrosting: wide, load, columns: {} });
      const heated = { ...circuit, defrost: { ...circuit.defrost, kind: 'hot-gas' as const } };
      expect(shapesOf(verdictOf(analyse, [heated], days))).toEqual(['extended']);
    });

    test('are not where the coil had more to melt and came no higher, nor without heat', () => {
      const laden = (minute: number) => 0.04 * (day(minute) < 11 ? 1 : 13 / 18);
      expect(shapesWith(laden, 'hot-gas')).toEqual([]);
      expect(shapesWith(asEver, 'off-cycle')).toEqual([]);
    });
  });

  test('without a status the valve that stays shut shows it for a coil that is heated, and for no other', () => {
    const starts = [180, 900];
    const usual = dailyDefrosts(starts, 22);
    const long = dailyDefrosts(starts, 38);
    const isDefrosting = (minute: number) => (day(minute) < 11 ? usual(minute) : long(minute));
    const load = (minute: number) => (isDefrosting(minute) ? 0.02 : 0.008);
    const circuit = simpleCase(gridOf(days), { isDefrosting, load, columns: { valve: true } });
    const shapesAs = (kind: 'electric' | 'off-cycle') =>
      shapesOf(verdictOf(analyse, [{ ...circuit, defrost: { ...circuit.defrost, kind } }], days));
    expect(shapesAs('electric')).toEqual(['extended']);
    expect(shapesAs('off-cycle')).toEqual([]);
  });

  test('a week of changing ones and a week of the longest are enough to tell, five days of each are not', () => {
    const ran = (each: number) => {
      const lengths = [24, 26, 25, 27, 23, 26, 25];
      const isDefrosting = (minute: number) => {
        const k = Math.floor(minute / 1440);
        return dailyDefrosts([180], k < each ? lengths[k % 7]! : 31)(minute);
      };
      const circuit = simpleCase(gridOf(2 * each), { isDefrosting });
      const heated = { ...circuit, defrost: { ...circuit.defrost, kind: 'electric' as const } };
      return shapesOf(verdictOf(analyse, [heated], 2 * each));
    };
    expect(ran(7)).toEqual(['by-the-clock']);
    expect(ran(5)).toEqual([]);
  });

  test('defrosts that have always ended a little before their longest time have not changed', () => {
    const grid = gridOf(days);
    const lengths = [44, 45, 43, 45, 44, 45];
    const varied = (minute: number) =>
      dailyDefrosts([180, 900], lengths[Math.floor(minute / 720) % 6]!)(minute);
    const longest = dailyDefrosts([180, 900], 45);
    const isDefrosting = (minute: number) => (day(minute) < 11 ? varied(minute) : longest(minute));
    const circuit = simpleCase(grid, { isDefrosting });
    const electric = { ...circuit, defrost: { ...circuit.defrost, kind: 'electric' as const } };
    expect(verdictOf(analyse, [electric], days).evidence).toEqual([]);
  });

  test('a coil that goes past its usual end temperature was not ended by it', () => {
    const grid = gridOf(days);
    const seen = (isDefrosting: (minute: number) => boolean) => {
      const circuit = simpleCase(grid, { isDefrosting });
      const coil = Float64Array.from({ length: grid.count }, (_, i) =>
        isDefrosting(i) ? (i % 360) / 10 - 4 + (day(i) < 11 ? 0 : 6) : -6,
      );
      const record = recordOf('M01 coil', 'temperature', coil);
      return shapesOf(verdictOf(analyse, [{ ...circuit, defrostTermination: [record] }], days));
    };
    const longer = (minute: number) =>
      produceDefrosts(minute) || (day(minute) >= 11 && produceDefrosts(minute - 3));
    expect(seen(longer)).toEqual(['overheated']);
    expect(seen(produceDefrosts)).toEqual([]);
  });
});

describe('missed defrosts', () => {
  test('a time of day at which they no longer come is told, with how many', () => {
    const isDefrosting = (minute: number) =>
      produceDefrosts(minute) && !(day(minute) > 12 && minute % 1440 >= 480 && minute % 1440 < 600);
    const { evidence } = judge({ isDefrosting });
    expect(evidence.map((one) => one.kind)).toEqual(['defrost-missed']);
    expect(measureOf(evidence[0]!, 'missedDefrosts')).toBe(8);
    expect(dayOfOnset(evidence[0]!)).toBeCloseTo(12.33, 1);
    expect(evidence[0]!.end).toBeNull();
  });

  test('all of them missing is told too', () => {
    const { evidence } = judge({ isDefrosting: (minute) => produceDefrosts(minute) && day(minute) < 15 });
    expect(evidence[0]!.kind).toBe('defrost-missed');
    expect(evidence[0]!.features.allSince).toBe(1);
  });

  test('a single one is only a remark', () => {
    const isDefrosting = (minute: number) =>
      produceDefrosts(minute) && !(day(minute) > 12.2 && day(minute) < 12.5);
    const { evidence } = judge({ isDefrosting });
    expect(evidence[0]!.shape).toBe('single');
    expect(evidence[0]!.certainty).toBeLessThan(0.5);
  });
});

describe('defrosts that come at other hours', () => {
  const shifted = (minutes: number) => (minute: number) =>
    produceDefrosts(day(minute) < 10.3 ? minute : minute + minutes);

  test.each([
    [75, -75],
    [-130, 130],
  ])('by %d min on the clock have moved by %d, and none of them was lost', (ahead, moved) => {
    const found = judge({ isDefrosting: shifted(ahead) }).evidence;
    const seen = found.find((one) => one.shape === 'moved')!;
    expect(measureOf(seen, 'defrostsMovedBy')).toBe(moved);
    expect(seen.features.spacingMinutes).toBe(360);
    expect(Math.abs(dayOfOnset(seen) - 10.3)).toBeLessThan(0.3);
    expect(found.filter((one) => one.shape === 'missed')).toEqual([]);
  });

  test('are dated by the day that parts old from new, and not by one that somebody started by hand before', () => {
    const byHand = (minute: number) => minute >= 9 * 1440 + 250 && minute < 9 * 1440 + 295;
    const isDefrosting = (minute: number) => byHand(minute) || shifted(-130)(minute);
    const seen = judge({ isDefrosting }).evidence.find((one) => one.shape === 'moved')!;
    expect(measureOf(seen, 'defrostsMovedBy')).toBe(130);
    expect(Math.abs(dayOfOnset(seen) - 10.3)).toBeLessThan(0.3);
  });

  test('tell how many of them fall in the trading day, before and since', () => {
    const night = dailyDefrosts([60, 1320], 45);
    const isDefrosting = (minute: number) => night(day(minute) < 10.3 ? minute : minute - 840);
    const seen = judge({ isDefrosting }).evidence.find((one) => one.shape === 'moved')!;
    expect(seen.features).toMatchObject({ tradingBefore: 0, tradingNow: 2 });
  });

  // Sunday 1 November 2026: the clocks of North America go back. From memory.
  test.each([
    [60, 51, 1],
    [60, 37, 0],
    [95, 51, 0],
  ])('by %d min, told %d days later, are those of clocks that changed: %d', (minutes, later, changed) => {
    const log = handMadeLog({
      days,
      circuits: [simpleCase(gridOf(days), { isDefrosting: shifted(minutes) })],
    });
    const redated = log.calendar.days.map((one) => {
      const date = new Date(Date.parse(one.date) + later * 86_400_000);
      return { ...one, date: date.toISOString().slice(0, 10), weekday: date.getUTCDay() };
    });
    const signals = computeSignals({ ...log, calendar: { ...log.calendar, days: redated } }).circuits[0]!;
    const seen = analyse(signals, null).evidence.find((one) => one.shape === 'moved')!;
    expect(seen.features.clocksChanged).toBe(changed);
  });

  test('are not one that was moved among others that stayed', () => {
    const isDefrosting = (minute: number) =>
      dailyDefrosts([120, 480, 840, day(minute) < 10 ? 1200 : 1100], 45)(minute);
    expect(shapesOf(judge({ isDefrosting }))).not.toContain('moved');
  });
});

test('where no defrost can be seen it says so and what would show them', () => {
  const { evidence, abstentions } = judge({ isDefrosting: () => false, columns: {} });
  expect(evidence).toEqual([]);
  expect(abstentions[0]!.needs).toContain('defrost status');
});

describe('a change of level in a row of events', () => {
  test('is placed at its first event', () => {
    const change = levelChange([5, 6, 5, 5, 6, 5, 12, 11, 12, 13])!;
    expect(change).toMatchObject({ at: 6, before: 5, after: 12 });
  });
  test('of fewer than three on a side is none', () => {
    expect(levelChange([1, 1, 9, 9])).toBeNull();
  });
});
