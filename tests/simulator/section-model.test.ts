import { describe, expect, it } from 'vitest';
import { exampleStore } from '../../sample-logs/maker/examples.ts';
import { toLog } from '../../sample-logs/maker/to-log.ts';

describe('the section model', () => {
  it('gives the same store for the same seed, to the bit, and another for another seed', () => {
    const first = exampleStore('iced-end', { days: 3, mediumCircuits: 2, lowCircuits: 0 });
    const again = exampleStore('iced-end', { days: 3, mediumCircuits: 2, lowCircuits: 0 });
    const other = exampleStore('iced-end', { days: 3, mediumCircuits: 2, lowCircuits: 0, seed: 12 });
    expect(again.circuits[0]!.air[0]!.values).toEqual(first.circuits[0]!.air[0]!.values);
    expect(other.circuits[0]!.air[0]!.values).not.toEqual(first.circuits[0]!.air[0]!.values);
  });

  it('becomes a model log with a value for every probe at every sample', () => {
    const log = toLog(exampleStore('healthy', { days: 3, mediumCircuits: 2, lowCircuits: 1 }));
    expect(log.grid.count).toBe(3 * 1440);
    expect(log.calendar.days.map((day) => day.hours)).toEqual([24, 24, 24]);
    for (const circuit of log.circuits) {
      for (const probe of circuit.probes) expect(probe.record.values.some(Number.isNaN)).toBe(false);
    }
  });
});
