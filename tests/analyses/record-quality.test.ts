import { describe, expect, it } from 'vitest';
import { analyse } from '../../src/analyses/record-quality/index.ts';
import { unitChange } from '../../src/analyses/record-quality/unit-change.ts';
import type { Log } from '../../src/model/log.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { handMadeStore, startMs, still } from './support/hand-made-store.ts';

const minuteMs = 60_000;
const store = (days = 6): Log =>
  handMadeStore({
    days,
    circuits: [
      { id: 'M01', probes: [still, () => 0.3, still] },
      { id: 'M02', probes: [still, still] },
    ],
  });

function seen(log: Log) {
  const signals = computeSignals(log);
  return signals.circuits.flatMap((one) => analyse(one, null, signals).evidence);
}

const everyRecord = (log: Log) =>
  log.circuits.flatMap(({ probes, valve, defrost }) => [
    ...probes.map(({ record }) => record),
    valve!,
    defrost.status!,
  ]);

describe('record quality', () => {
  it('has nothing to say about a whole record', () => {
    expect(seen(store())).toEqual([]);
  });

  it('reports once what is missing everywhere, and where its longest stretch lies', () => {
    const log = store();
    for (const { values } of everyRecord(log)) {
      values.fill(Number.NaN, 100, 130);
      values.fill(Number.NaN, 500, 513);
    }
    const [gap, ...others] = seen(log);
    expect(others).toEqual([]);
    expect(gap).toMatchObject({ shape: 'gap', circuit: null, onset: startMs + 100 * 5 * minuteMs });
    expect(Object.fromEntries(gap!.measures.map(({ name, value }) => [name, value]))).toMatchObject({
      'longest gap': 2.5,
      gaps: 2,
    });
  });

  it('calls no gap what another point was logged through', () => {
    const log = store();
    for (const { values } of everyRecord(log).slice(1)) values.fill(Number.NaN, 100, 130);
    expect(seen(log).filter(({ shape }) => shape === 'gap')).toEqual([]);
  });

  it('takes 60 minutes for a gap and 55 for a pause', () => {
    const withPause = (samples: number) => {
      const log = store();
      for (const { values } of everyRecord(log)) values.fill(Number.NaN, 100, 100 + samples);
      return seen(log).length;
    };
    expect(withPause(11)).toBe(0);
    expect(withPause(12)).toBe(1);
  });

  it('calls a column with few readings thin, and one that never moves not connected', () => {
    const log = store();
    const [first, second] = log.circuits[0]!.probes;
    first!.record.values.fill(Number.NaN, 0, 600);
    second!.record.values.fill(0.93);
    const shapes = seen(log).map(({ shape, probe }) => [shape, probe]);
    expect(shapes).toContainEqual(['thin', 'M01 air A']);
    expect(shapes).toContainEqual(['not-connected', 'M01 air B']);
  });

  it('calls two columns with the same readings one channel', () => {
    const log = store();
    const [first, , third] = log.circuits[0]!.probes;
    third!.record.values.set(first!.record.values);
    expect(seen(log).map(({ shape, points }) => [shape, points])).toEqual([
      ['twin', ['M01 air A', 'M01 air C']],
    ]);
  });
});

describe('a change of unit', () => {
  const days = (change: (celsius: number) => number): Float64Array =>
    Float64Array.from({ length: 12 }, (_, day) => {
      const air = 3 + 0.2 * Math.sin(day);
      return day < 7 ? air : change(air);
    });

  it('sees Celsius written into a Fahrenheit column, and the other way round', () => {
    expect(unitChange(days((c) => (c - 32) / 1.8))?.day).toBe(7);
    expect(unitChange(days((c) => c * 1.8 + 32))?.day).toBe(7);
  });

  it('takes a case that warms by as much for what it is', () => {
    expect(unitChange(days((c) => c + 12))).toBeNull();
  });

  it('comes from one reading to the next: freezers that lose their rack and warm by as much within hours have none', () => {
    const frozen = (hours: number) => {
      const log = handMadeStore({
        days: 12,
        circuits: [{ id: 'L01', setPoint: -23.3, probes: [still, still, still] }],
      });
      for (const { record } of log.circuits[0]!.probes)
        for (let i = 0; i < record.values.length; i++) {
          const since = (i / 288 - 6) * 24;
          if (since >= 0) record.values[i]! += 13.3 * Math.min(1, (since + 0.01) / hours);
        }
      return seen(log).filter(({ shape }) => shape === 'unit-change').length;
    };
    expect(frozen(0.01)).toBe(3);
    expect(frozen(3)).toBe(0);
  });
});
