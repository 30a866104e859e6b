import { describe, expect, test } from 'vitest';
import { analyse, analyseCompressors, meta } from '../../src/analyses/short-cycling/index.ts';
import { mostInAnHour } from '../../src/analyses/short-cycling/start-rate.ts';
import type { Record } from '../../src/model/record.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { dayOfOnset, measureOf, verdictOf } from '../support/analyse-case.ts';
import {
  gridOf,
  groupOf,
  handMadeLog,
  recordOf,
  startOfHistory,
  valuesOf,
} from '../support/hand-made-log.ts';
import { simpleCase } from '../support/simple-case.ts';

const days = 14;

/** Runs `on` minutes and stands `off` minutes, over and over. */
const cycling = (on: number, off: number) => (minute: number) => (minute % (on + off) < on ? 1 : 0);

function ofCompressor(run: (minute: number) => number, stepMinutes = 1, parts: Partial<Record> = {}) {
  const grid = gridOf(days, stepMinutes);
  const compressor = recordOf('S1 comp 1', 'status', valuesOf(grid, run), parts);
  const log = handMadeLog({
    days,
    stepMinutes,
    circuits: [],
    suctionGroups: [groupOf({ compressors: [compressor] })],
  });
  const site = computeSignals(log);
  return analyseCompressors(site.groups[0]!, site);
}

describe('compressors', () => {
  test('a machine that ran 10 and stood 10 minutes and then 2 and 2 is found from the hour on', () => {
    const change = 8.25 * 1440;
    const { evidence } = ofCompressor((minute) =>
      minute < change ? cycling(10, 10)(minute) : cycling(2, 2)(minute),
    );
    expect(evidence).toHaveLength(1);
    expect(evidence[0]!.probe).toBe('S1 comp 1');
    expect(Math.abs(dayOfOnset(evidence[0]!) - 8.25)).toBeLessThan(0.1);
    expect(measureOf(evidence[0]!, 'mostStartsInAnHour')).toBe(15);
    expect(measureOf(evidence[0]!, 'usualStartsPerHour')).toBeCloseTo(3, 1);
    expect(measureOf(evidence[0]!, 'shortRunShare')).toBeCloseTo(100, 0);
    expect(evidence[0]!.end).toBeNull();
    expect(evidence[0]!.certainty).toBeGreaterThan(0.9);
  });

  // Limits: scroll 12 starts an hour (a compressor maker's application guide), semi-hermetic reciprocating 8 to 10
  // (common practice, no source); 10 is used where the kind is unknown.
  test.each([
    [4, 6, 0],
    [3, 4, 0],
    [2, 3, 1],
  ])('%d min running and %d standing all the time: %d findings', (on, off, findings) => {
    expect(ofCompressor(cycling(on, off)).evidence).toHaveLength(findings);
  });

  test('a busy hour or two are no finding', () => {
    const busy = (minute: number) => minute > 5 * 1440 && minute < 5 * 1440 + 120;
    expect(
      ofCompressor((minute) => (busy(minute) ? cycling(1, 2)(minute) : cycling(10, 10)(minute))).evidence,
    ).toEqual([]);
  });

  test('what has stopped has an end', () => {
    const bad = (minute: number) => minute > 4 * 1440 && minute < 8 * 1440;
    const { evidence } = ofCompressor((minute) =>
      bad(minute) ? cycling(2, 2)(minute) : cycling(10, 10)(minute),
    );
    expect((evidence[0]!.end! - startOfHistory) / 86_400_000).toBeCloseTo(8, 0);
  });

  test('the logging interval says what it cannot show, instead of silence', () => {
    const { evidence, abstentions } = ofCompressor(cycling(10, 10), 5);
    expect(evidence).toEqual([]);
    expect(abstentions).toHaveLength(1);
    expect(abstentions[0]!.reason).toContain('logged every 5 min: runs shorter than 10 min cannot be seen');
    expect(ofCompressor(cycling(10, 10), 1).abstentions).toEqual([]);
  });

  test('every change counts where changes are logged, however short', () => {
    const grid = gridOf(days);
    const times: number[] = [];
    const values: number[] = [];
    for (let second = 0; second < days * 86_400; second += 90) {
      times.push(startOfHistory + second * 1000);
      values.push(values.length % 2 === 0 ? 1 : 0);
    }
    const changes = { times: Float64Array.from(times), values: Float64Array.from(values) };
    const parts = {
      logging: 'change-of-value' as const,
      changes,
      last: startOfHistory + grid.count * grid.stepMs,
    };
    const { evidence } = ofCompressor(() => 1, 1, parts);
    expect(measureOf(evidence[0]!, 'startsPerHour')).toBeCloseTo(20, 0);
    expect(measureOf(evidence[0]!, 'shortestTenthOfRuns')).toBeCloseTo(1.5, 6);
  });

  test('without run status, fast swings of the suction are told as inferred and never as certain', () => {
    const grid = gridOf(days);
    const saw = (minute: number) => (minute < 8 * 1440 ? minute % 20 : minute % 4) * 8;
    const pressure = recordOf(
      'S1 suction',
      'pressure',
      valuesOf(grid, (minute) => 400 + saw(minute)),
    );
    const site = computeSignals(handMadeLog({ days, circuits: [], suctionGroups: [groupOf({ pressure })] }));
    const { evidence, abstentions } = analyseCompressors(site.groups[0]!, site);
    expect(evidence[0]!.shape).toBe('inferred');
    expect(evidence[0]!.certainty).toBeLessThan(0.5);
    expect(abstentions[0]!.needs).toBe('run status of each compressor');
  });

  test('no start is counted across a gap', () => {
    const gap = (minute: number) => Math.floor(minute / 3) % 2 === 0;
    const { evidence } = ofCompressor((minute) => (gap(minute) ? Number.NaN : Math.floor(minute / 6) % 2));
    expect(evidence).toEqual([]);
  });
});

describe('valves', () => {
  const grid = gridOf(days);
  test('a valve with its usual differential is silent', () => {
    expect(verdictOf(analyse, [simpleCase(grid)], days).evidence).toEqual([]);
  });

  test('a valve that was pulsed from a day on is found, its circuit and its shrunk swing named', () => {
    const circuit = simpleCase(grid);
    const pulsed = circuit.valve!.values.map((open, i) => (i < 9 * 1440 ? open : cycling(1, 2)(i)));
    const valve = { ...circuit.valve!, values: pulsed };
    const { evidence } = verdictOf(analyse, [{ ...circuit, valve }], days);
    expect(evidence).toHaveLength(1);
    expect(evidence[0]!.circuit).toBe('M01');
    expect(evidence[0]!.shape).toBe('valve');
    expect(dayOfOnset(evidence[0]!)).toBeCloseTo(9, 1);
  });

  test('a valve that had hardly ever shut and begins to cycle has no norm to be over', () => {
    const circuit = simpleCase(grid);
    const withValve = (before: (minute: number) => number) => {
      const values = circuit.valve!.values.map((_, i) => (i < 9 * 1440 ? before(i) : cycling(4, 4)(i)));
      return verdictOf(analyse, [{ ...circuit, valve: { ...circuit.valve!, values } }], days).evidence;
    };
    expect(withValve(cycling(27, 3))).toEqual([]);
    expect(withValve(cycling(15, 15)).map((one) => one.shape)).toEqual(['valve']);
  });

  // A coil that became colder, or a case that became lighter, opens its valve more often at the same differential.
  test('a valve under its limit that opens twice as often while the air swings wider has no tighter differential', () => {
    const circuit = simpleCase(grid);
    const values = circuit.valve!.values.map((_, i) => (i < 9 * 1440 ? cycling(12, 5) : cycling(4, 4))(i));
    const swingingBy = (factor: number) => {
      const probes = circuit.probes.map((probe) => ({
        ...probe,
        record: {
          ...probe.record,
          values: probe.record.values.map((value, i) =>
            i < 9 * 1440 ? value : 2.8 + (value - 2.8) * factor,
          ),
        },
      }));
      const { evidence } = verdictOf(
        analyse,
        [{ ...circuit, probes, valve: { ...circuit.valve!, values } }],
        days,
      );
      return evidence.map((one) => one.shape);
    };
    expect(swingingBy(1.3)).toEqual([]);
    expect(swingingBy(1)).toEqual(['valve']);
    expect(swingingBy(0.6)).toEqual(['valve']);
  });

  test('a tight differential is told by the swing of the air where the valve is read every 5 minutes', () => {
    const coarse = gridOf(days, 5);
    const circuit = simpleCase(coarse);
    const probes = circuit.probes.map((probe) => ({
      ...probe,
      record: {
        ...probe.record,
        values: probe.record.values.map((value, i) => (i < 9 * 288 ? value : 2.8 + (value - 2.8) / 4)),
      },
    }));
    const { evidence, abstentions } = verdictOf(analyse, [{ ...circuit, probes }], days, 5);
    expect(evidence.map((one) => one.shape)).toEqual(['valve-inferred']);
    expect(abstentions[0]!.reason).toContain('openings shorter than 10 min cannot be seen');
  });

  test('air that swings less, read as coarsely, is a coil short of cooling where the valve feeds more than at first', () => {
    const coarse = gridOf(days, 5);
    const circuit = simpleCase(coarse);
    const byDay = (value: (day: number, i: number, was: number) => number) => (was: number, i: number) =>
      value(i / 288, i, was);
    const shapes = (feeding: (day: number) => number) => {
      const probes = circuit.probes.map((probe) => ({
        ...probe,
        record: {
          ...probe.record,
          values: probe.record.values.map(byDay((day, _, was) => (day < 10 ? was : 2.8 + (was - 2.8) / 4))),
        },
      }));
      const values = circuit.valve!.values.map(byDay((day, i) => (i % 10 < 10 * feeding(day) ? 1 : 0)));
      const changed = { ...circuit, probes, valve: { ...circuit.valve!, values } };
      return verdictOf(analyse, [changed], days, 5).evidence.map(({ shape }) => shape);
    };
    expect(shapes(() => 0.5)).toEqual(['valve-inferred']);
    expect(shapes((day) => (day < 5 ? 0.5 : 0.8))).toEqual([]);
  });
});

describe('without a valve column', () => {
  const grid = gridOf(days);
  const circuit = { ...simpleCase(grid), valve: null };
  const airFrom = (change: (value: number, minute: number) => number) => {
    const probes = circuit.probes.map((probe) => ({
      ...probe,
      record: {
        ...probe.record,
        values: probe.record.values.map((value, i) =>
          i < 9 * 1440 || value > 4.5 ? value : change(value, i),
        ),
      },
    }));
    return verdictOf(analyse, [{ ...circuit, probes }], days).evidence;
  };
  const quick = (minute: number) => 0.3 * Math.sin((2 * Math.PI * minute) / 6);

  test('air that swings less and faster at its old level shows a valve that starts too often', () => {
    const [evidence, ...others] = airFrom((_, minute) => 2.8 + quick(minute));
    expect(others).toEqual([]);
    expect(evidence).toMatchObject({ shape: 'valve-inferred', circuit: 'M01', features: { byAir: 1 } });
    expect(Math.abs(dayOfOnset(evidence!) - 9)).toBeLessThan(1.1);
    expect(measureOf(evidence!, 'airCyclesPerHour')).toBeGreaterThan(6);
  });

  test.each<[string, (value: number, minute: number) => number]>([
    ['that goes on as it did', (value) => value],
    ['that swings less and no faster', (value) => 2.8 + (value - 2.8) / 4],
    ['that is not held any more', (_, minute) => 4 + quick(minute)],
  ])('air %s is silent', (_, change) => {
    expect(airFrom(change)).toEqual([]);
  });
});

describe('valves of a group', () => {
  const grid = gridOf(days);
  /** Each opens for 6 of 15 minutes: at minutes of its own, or from `together` on at one and the same. */
  const groupOfValves = (count: number, together: (minute: number) => boolean, openMinutes = 6) => {
    const circuits = Array.from({ length: count }, (_, i) => {
      const circuit = simpleCase(grid, { id: `M0${i + 1}`, seed: i + 1, probes: 1, suctionGroup: 'S1' });
      const own = (minute: number) => (minute * (1 + i / 90) + 4 * i) % 15 < 6;
      const open = (minute: number) => (together(minute) ? minute % 15 < openMinutes : own(minute));
      const values = circuit.valve!.values.map((_open, minute) =>
        circuit.defrost.status!.values[minute] === 1 ? 0 : Number(open(minute)),
      );
      return { ...circuit, valve: { ...circuit.valve!, values } };
    });
    const site = computeSignals(handMadeLog({ days, circuits, suctionGroups: [groupOf()] }));
    return analyseCompressors(site.groups[0]!, site).evidence.filter((one) => one.shape === 'in-step');
  };

  test('that fell into step are told from that hour on, with how much they agree', () => {
    const [inStep] = groupOfValves(4, (minute) => minute >= 8.5 * 1440);
    expect(inStep).toMatchObject({ circuit: null, suctionGroup: 'S1', end: null });
    expect(measureOf(inStep!, 'inStep')).toBeGreaterThan(0.95);
    expect(Math.abs(measureOf(inStep!, 'usualInStep'))).toBeLessThan(0.1);
    expect(Math.abs(dayOfOnset(inStep!) - 8.5)).toBeLessThan(0.1);
  });

  test('that hardly ever shut since are told as such', () => {
    const since = (minute: number) => minute >= 8.5 * 1440;
    expect(groupOfValves(4, since)[0]!.features.shareFull).toBe(0);
    expect(groupOfValves(4, since, 14)[0]!.features.shareFull).toBe(1);
  });

  test('that go their own ways, or always went together, or do so by night alone, are silent', () => {
    expect(groupOfValves(4, () => false)).toEqual([]);
    expect(groupOfValves(4, () => true)).toEqual([]);
    expect(groupOfValves(4, (minute) => minute >= 7 * 1440 && minute % 1440 < 300)).toEqual([]);
  });

  test('of which there are but two are told with their number, and one has no step', () => {
    const [pair] = groupOfValves(2, (minute) => minute >= 7 * 1440);
    expect(pair!.features.valves).toBe(2);
    expect(groupOfValves(2, () => false)).toEqual([]);
    expect(groupOfValves(1, (minute) => minute >= 7 * 1440)).toEqual([]);
  });

  test('that stand open all the time show nothing of it', () => {
    const circuits = ['M01', 'M02'].map((id, i) => {
      const circuit = simpleCase(grid, { id, seed: i + 1, suctionGroup: 'S1' });
      return { ...circuit, valve: { ...circuit.valve!, values: circuit.valve!.values.map(() => 1) } };
    });
    const site = computeSignals(handMadeLog({ days, circuits, suctionGroups: [groupOf()] }));
    expect(analyseCompressors(site.groups[0]!, site).evidence.map(({ shape }) => shape)).not.toContain(
      'in-step',
    );
  });
});

describe('circuits of a group without valve columns', () => {
  const strokes = { fast: 8, slow: 24 };
  /**
   * Air between strokes of a few minutes: each circuit at a pace and phase of its own, or from `together` on all at one. All follow
   * what the store does to them alike (`shared`).
   */
  const airOf = (
    together: (minute: number) => boolean,
    { stepMinutes = 1, period = strokes.fast, shared = (_minute: number): number => 0, modulating = 0 } = {},
  ) => {
    const grid = gridOf(days, stepMinutes);
    const circuits = Array.from({ length: 5 }, (_, c) => {
      const circuit = simpleCase(grid, { id: `M0${c + 1}`, seed: c + 1, suctionGroup: 'S1' });
      const isModulating = c < modulating;
      const own = (minute: number) => 0.4 * Math.sin((2 * Math.PI * minute) / (19 + 1.3 * c) + c);
      const stroke = (minute: number) =>
        together(minute) && !isModulating ? 0.3 * Math.sin((2 * Math.PI * minute) / period) : own(minute);
      const probes = circuit.probes.map((probe) => ({
        ...probe,
        record: {
          ...probe.record,
          values: probe.record.values.map((was, i) =>
            was > 4.5 ? was : 2.8 + stroke(i * stepMinutes) + shared(i * stepMinutes),
          ),
        },
      }));
      return { ...circuit, probes, valve: null };
    });
    const site = computeSignals(handMadeLog({ days, stepMinutes, circuits, suctionGroups: [groupOf()] }));
    return analyseCompressors(site.groups[0]!, site).evidence.filter(({ shape }) => shape === 'in-step');
  };
  const since = (minute: number) => minute >= 8.5 * 1440;

  test.each([1, 2])(
    'whose air goes up and down together, read every %d min, are in step since that hour',
    (stepMinutes) => {
      const [inStep, ...others] = airOf(since, { stepMinutes });
      expect(others).toEqual([]);
      expect(inStep).toMatchObject({ circuit: null, suctionGroup: 'S1', end: null });
      expect(inStep!.features).toMatchObject({ byAir: 1, tooOften: 1, valves: 5 });
      expect(measureOf(inStep!, 'inStep')).toBeGreaterThan(0.9);
      expect(measureOf(inStep!, 'usualInStep')).toBeLessThan(0.15);
      expect(Math.abs(measureOf(inStep!, 'airCyclesPerHour') - 60 / strokes.fast)).toBeLessThan(1);
      expect(Math.abs(dayOfOnset(inStep!) - 8.5)).toBeLessThan(0.1);
    },
  );

  test('are in step though some of them modulate, which nobody knows', () => {
    expect(airOf(since, { modulating: 2 })).toHaveLength(1);
  });

  test('do not start too often where their strokes are long', () => {
    expect(airOf(since, { period: strokes.slow })[0]!.features.tooOften).toBe(0);
  });

  test.each<[string, ReturnType<typeof airOf>]>([
    ['that go their own ways', airOf(() => false)],
    ['that always went together', airOf(() => true)],
    ['that do so by night alone', airOf((minute) => since(minute) && minute % 1440 < 300)],
    [
      'that warm and cool together with the hours',
      airOf(() => false, { shared: (minute) => (since(minute) ? Math.sin(minute / 20) : 0) }),
    ],
    ['that are read too coarsely', airOf(since, { stepMinutes: 5 })],
  ])('%s are silent', (_, evidence) => {
    expect(evidence).toEqual([]);
  });
});

test('the most starts within any 60 minutes are counted across the full hours', () => {
  const at = (minutes: number[]) => minutes.map((minute) => minute * 60_000);
  expect(mostInAnHour(at([0, 55, 56, 57, 58, 61, 62, 63, 200]), 0)).toBe(7);
  expect(mostInAnHour(at([0, 60, 120]), 0)).toBe(1);
  expect(mostInAnHour([], 0)).toBe(0);
});

test('every threshold has a unit, a meaning and a source', () => {
  for (const setting of Object.values(meta.settings)) {
    expect(setting.unit).not.toBe('');
    expect(setting.meaning.length).toBeGreaterThan(10);
    expect(setting.source.length).toBeGreaterThan(5);
  }
});
