import { describe, expect, it } from 'vitest';
import { simulateLumped } from '../../sample-logs/maker/lumped-model/simulate.ts';
import { simulateSections } from '../../sample-logs/maker/section-model/simulate.ts';
import type { SimulatedStore } from '../../sample-logs/maker/simulated-store.ts';
import { defrostEnds, feeding, median, recoveryMinutes } from './support.ts';

/** Ranges of healthy behaviour: common practice, no source, unless another is named. */
const days = 5;
const stores: readonly [string, SimulatedStore][] = [
  ['section model', simulateSections({ seed: 301, days, mediumCircuits: 5, lowCircuits: 3 })],
  ['lumped model', simulateLumped({ seed: 302, days, mediumCircuits: 5, lowCircuits: 3 })],
];

describe.each(stores)('healthy line-ups of the %s', (_, store) => {
  const minutes = days * 1440;

  it('feed 0.3 to 0.92 of the time', () => {
    for (const circuit of store.circuits) {
      const { duty } = feeding(circuit, 1440, minutes);
      expect(duty, circuit.id).toBeGreaterThan(0.3);
      expect(duty, circuit.id).toBeLessThan(0.92);
    }
  });

  it('start an on/off valve at most eight times an hour', () => {
    for (const circuit of store.circuits) {
      expect(feeding(circuit, 1440, minutes).startsPerHour, circuit.id).toBeLessThan(8);
    }
  });

  it('hold the mean of their probes within 1.5 K of the set point in settled air', () => {
    for (const circuit of store.circuits) {
      const ends = defrostEnds(circuit, 1440, minutes);
      const settled = ends.map((end) => end + 90).filter((at) => at + 30 < minutes);
      const level = median(
        settled.map((at) =>
          circuit.air.reduce((sum, { values }) => sum + values[at]! / circuit.air.length, 0),
        ),
      );
      expect(Math.abs(level - circuit.setPoint), circuit.id).toBeLessThan(1.5);
    }
  });

  it('rise 3 to 14 K in an off-cycle defrost of half an hour and more and recover within 5 to 60 minutes', () => {
    for (const circuit of store.circuits.filter(
      ({ defrost }) => defrost.kind === 'off-cycle' && defrost.minutes >= 30,
    )) {
      for (const { values } of circuit.air) {
        const ends = defrostEnds(circuit, 1440, minutes);
        const peak = median(ends.map((end) => Math.max(...values.subarray(end - 10, end + 10))));
        expect(peak - circuit.setPoint, circuit.id).toBeGreaterThan(3);
        expect(peak - circuit.setPoint, circuit.id).toBeLessThan(14);
        const level = circuit.setPoint + circuit.differential / 2 + 1.2;
        const recovery = median(ends.map((end) => recoveryMinutes(values, end, level) ?? 240));
        expect(recovery, circuit.id).toBeGreaterThanOrEqual(2);
        expect(recovery, circuit.id).toBeLessThan(60);
      }
    }
  });

  it('keep median suction within 7 % of what was aimed at, and machines under eight starts an hour', () => {
    for (const group of store.groups) {
      const suction = group.points.find(({ role }) => role === 'suction')!.values;
      expect(Math.abs(median([...suction]) / group.suctionSetPoint - 1), group.id).toBeLessThan(0.07);
      for (const { values } of group.points.filter(({ role }) => role === 'compressor')) {
        let starts = 0;
        for (let i = 1; i < values.length; i++) if (values[i]! > values[i - 1]!) starts++;
        expect(starts / (days * 24)).toBeLessThan(8);
      }
    }
  });

  it('no two of them alike', () => {
    const firsts = store.circuits.map(({ air }) => air[0]!.values.subarray(0, 600).join());
    expect(new Set(firsts).size).toBe(store.circuits.length);
  });
});
