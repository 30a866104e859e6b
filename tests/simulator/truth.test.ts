import { describe, expect, it } from 'vitest';
import { exampleStore } from '../../sample-logs/maker/examples.ts';
import { faultNames } from '../../sample-logs/maker/fault-catalogue.ts';
import { defrostEnds, feeding, median, roleOf } from './support.ts';

const options = (simulator: 'one' | 'two') => ({
  simulator,
  days: 16,
  mediumCircuits: 2,
  lowCircuits: 0,
});
const simulators = ['one', 'two'] as const;

describe.each(simulators)('the truth of simulator %s agrees with its history', (simulator) => {
  it('for every fault: before the onset the store lives exactly as the healthy one does', () => {
    const small = { simulator, days: 3, mediumCircuits: 2, lowCircuits: 1, floating: true };
    const healthy = exampleStore('healthy', small);
    for (const name of faultNames) {
      const sick = exampleStore(name, { ...small, faults: [{ fault: name, onsetDay: 2 }] });
      const onset = Math.min(...sick.truth.faults.map((fault) => (fault.onset - sick.startMs) / sick.stepMs));
      expect(onset, name).toBeGreaterThanOrEqual(2 * 1440);
      sick.circuits.forEach((circuit, c) => {
        circuit.air.forEach(({ values }, i) => {
          const before = healthy.circuits[c]!.air[i]!.values;
          expect(values[onset - 1], `${name} ${circuit.id}`).toBe(before[onset - 1]);
        });
      });
    }
  });

  it('a target floats, and stands still from the day its float was switched off', () => {
    const store = exampleStore('float-frozen', { ...options(simulator), floating: true });
    const onset = (store.truth.faults[0]!.onset - store.startMs) / store.stepMs;
    const target = store.groups[0]!.points.find(({ role }) => role === 'suction-set-point')!.values;
    const range = (from: number, to: number): number => {
      const part = target.subarray(from, to);
      return Math.max(...part) - Math.min(...part);
    };
    expect(range(onset - 1440, onset)).toBeGreaterThan(10);
    expect(range(onset + 60, store.count)).toBe(0);
  });

  it('a clock that jumped brings every defrost of its group at another hour, as many as before', () => {
    const store = exampleStore('clock-reset', options(simulator));
    const { onset: at, size } = store.truth.faults[0]!;
    const onset = (at - store.startMs) / store.stepMs;
    for (const circuit of store.circuits) {
      const before = defrostEnds(circuit, onset - 4 * 1440, onset).length;
      const after = defrostEnds(circuit, onset + 1440, onset + 5 * 1440);
      expect(Math.abs(after.length - before)).toBeLessThanOrEqual(1);
      const minutes = circuit.defrost.starts.map((start) => start + circuit.defrost.minutes);
      const off = after.map((end) =>
        Math.min(...minutes.map((m) => Math.abs(((end - m + 2160) % 1440) - 720))),
      );
      expect(median(off)).toBeGreaterThan(Math.min(size, 60) - 30);
    }
  });

  it('valves in step open at the same minute', () => {
    const store = exampleStore('circuits-in-step', options(simulator));
    const onset = (store.truth.faults[0]!.onset - store.startMs) / store.stepMs;
    const valves = store.circuits
      .flatMap(({ others }) => others)
      .filter(({ role, quantity }) => role === 'valve' && quantity === 'status');
    const opens = (values: Float64Array, from: number, to: number): Set<number> => {
      const starts = new Set<number>();
      for (let i = from; i < to; i++)
        if (values[i]! > values[i - 1]!) starts.add(i % store.truth.faults[0]!.size);
      return starts;
    };
    for (const { values } of valves) {
      expect(opens(values, onset - 1440, onset).size).toBeGreaterThan(3);
      expect(opens(values, onset + 60, onset + 300).size).toBeLessThanOrEqual(2);
    }
  });

  it('a termination that fails makes defrosts longer, or the fault would be none', () => {
    const store = exampleStore('termination-failed', { ...options(simulator), lowCircuits: 2 });
    const fault = store.truth.faults[0]!;
    const onset = (fault.onset - store.startMs) / store.stepMs;
    const defrost = roleOf(store.circuits.find(({ id }) => id === fault.circuit)!, 'defrost');
    const share = (from: number, to: number): number =>
      defrost.subarray(from, to).reduce((sum, state) => sum + state, 0) / (to - from);
    const days = 1440 * 4;
    expect(share(onset, onset + days)).toBeGreaterThan(1.1 * share(onset - days, onset));
  });

  it('a set point that was left changed stays so, and its circuit was shut meanwhile', () => {
    const store = exampleStore('set-point-left', {
      ...options(simulator),
      faults: [{ fault: 'set-point-left', on: 'M01', onsetDay: 8 }],
    });
    const fault = store.truth.faults[0]!;
    const onset = (fault.onset - store.startMs) / store.stepMs;
    const setPoint = roleOf(store.circuits[0]!, 'set-point');
    expect(Math.abs(setPoint[store.count - 1]! - setPoint[onset - 1]!)).toBeCloseTo(fault.size, 6);
    expect(feeding(store.circuits[0]!, onset, onset + 60).duty).toBe(0);
  });

  it('an iced end rises by the size that the truth states while the neighbours sink', () => {
    const store = exampleStore('iced-end', { ...options(simulator), days: 24 });
    const fault = store.truth.faults[0]!;
    expect(fault.size * 1.8).toBeGreaterThan(3.5);
    expect(fault.reachedThree! > fault.onset).toBe(true);
    const [iced, , last] = store.circuits[0]!.air;
    const ends = defrostEnds(store.circuits[0]!, 20 * 1440, 24 * 1440);
    const late = (values: Float64Array): number =>
      ends.reduce((sum, end) => sum + values[end - 5]! / ends.length, 0);
    expect(late(iced!.values)).toBeLessThan(late(last!.values) + 1);
  });

  it('a lying probe keeps its offset in defrost', () => {
    const healthy = exampleStore('healthy', options(simulator));
    const store = exampleStore('probe-step', options(simulator));
    const ends = defrostEnds(store.circuits[0]!, 12 * 1440, 16 * 1440 - 30);
    const gap = (of: typeof store): number =>
      ends.reduce((sum, end) => {
        const [a, b, c] = of.circuits[0]!.air.map(({ values }) => values[end - 3]!);
        return sum + (b! - (a! + c!) / 2) / ends.length;
      }, 0);
    expect(gap(store) - gap(healthy)).toBeGreaterThan(0.8 * (5 / 1.8));
  });

  it('store air that comes in at one place warms it in defrost as well', () => {
    const healthy = exampleStore('healthy', options(simulator));
    const faults = [{ fault: 'local-leak', on: 'M01', place: 0, onsetDay: 8, size: 6 }] as const;
    const sick = exampleStore('healthy', { ...options(simulator), faults });
    const { values } = sick.circuits[0]!.air[0]!;
    const added = (minute: number): number => values[minute]! - healthy.circuits[0]!.air[0]!.values[minute]!;
    const ends = defrostEnds(sick.circuits[0]!, 9 * 1440, sick.count).filter((end) => end < sick.count);
    expect(median(ends.map((end) => added(end - 2)))).toBeGreaterThan(1.2);
    expect(sick.truth.faults[0]!.size).toBeGreaterThan(1.7);
  });

  it('missed defrosts are fewer, and a circuit left off neither feeds nor defrosts', () => {
    const missed = exampleStore('defrost-missed', {
      ...options(simulator),
      faults: [{ fault: 'defrost-missed', on: 'M01', onsetDay: 8 }],
    }).circuits[0]!;
    expect(defrostEnds(missed, 9 * 1440, 16 * 1440).length).toBeLessThan(
      defrostEnds(missed, 1440, 8 * 1440).length,
    );
    const off = exampleStore('left-off', {
      ...options(simulator),
      faults: [{ fault: 'left-off', on: 'M01', onsetDay: 8 }],
    }).circuits[0]!;
    expect(feeding(off, 9 * 1440, 16 * 1440).duty).toBe(0);
    expect(
      roleOf(off, 'defrost')
        .subarray(9 * 1440)
        .every((state) => state === 0),
    ).toBe(true);
  });

  it('a creep takes the days that were asked for, and gathers or slows down as asked', () => {
    const rises = [0.6, 1, 2].map((bend) => {
      const creep = {
        fault: 'probe-creep',
        on: 'M01',
        place: 0,
        onsetDay: 2,
        overDays: 8,
        size: 6,
        bend,
      } as const;
      const wishes = { ...options(simulator), days: 12 };
      const sound = exampleStore('healthy', wishes).circuits[0]!;
      const sick = exampleStore('healthy', { ...wishes, faults: [creep] }).circuits[0]!;
      const apart = (day: number): number => {
        const offset = (of: typeof sick): number =>
          of.air[0]!.values[day * 1440]! - of.air[1]!.values[day * 1440]!;
        return offset(sick) - offset(sound);
      };
      return [apart(6), apart(11)] as const;
    });
    const [slowing, even, gathering] = rises.map(([half]) => half);
    expect(slowing! - even!).toBeGreaterThan(0.3);
    expect(even! - gathering!).toBeGreaterThan(0.5);
    for (const [, whole] of rises) expect(Math.abs(whole - 6 / 1.8)).toBeLessThan(1);
  });
});
