import { describe, expect, it } from 'vitest';
import { exampleStore } from '../../sample-logs/maker/examples.ts';
import { faultNames } from '../../sample-logs/maker/fault-catalogue.ts';
import { defrostEnds, feeding, roleOf } from './support.ts';

const options = (simulator: 'one' | 'two') => ({
  simulator,
  days: 16,
  mediumCircuits: 2,
  lowCircuits: 0,
});
const simulators = ['one', 'two'] as const;

describe.each(simulators)('the truth of simulator %s agrees with its history', (simulator) => {
  it('for every fault: before the onset the store lives exactly as the healthy one does', () => {
    const small = { simulator, days: 3, mediumCircuits: 2, lowCircuits: 1 };
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
});
