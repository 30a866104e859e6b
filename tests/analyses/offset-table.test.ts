import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { offsetTable } from '../../src/analyses/probe-disagreement/offset-table.ts';
import { spanOf } from '../../src/maths/fit-ramp.ts';
import { type CircuitSignals, Phase } from '../../src/signals/types.ts';

const samples = 30 * 12;

/** Some probes and the phase of their circuit, which is all that offsets are made from; a sample a minute. */
function circuitOf(probes: readonly (readonly number[])[], phase: readonly number[]): CircuitSignals {
  return {
    circuit: { probes: probes.map((values) => ({ record: { values: Float64Array.from(values) } })) },
    phase: Uint8Array.from(phase),
    log: { grid: { startMs: 0, stepMs: 60_000, count: samples } },
  } as unknown as CircuitSignals;
}

const filled = <T>(one: fc.Arbitrary<T>) => fc.array(one, { minLength: samples, maxLength: samples });
const reading = fc.oneof(
  { weight: 8, arbitrary: fc.integer({ min: -40, max: 40 }).map((step) => step / 10) },
  { weight: 1, arbitrary: fc.double({ min: -90, max: 90, noNaN: true }) },
  { weight: 1, arbitrary: fc.constant(Number.NaN) },
);
const phases = filled(fc.constantFrom(Phase.cooling, Phase.cooling, Phase.defrost, Phase.off));

describe('offsets of half hours lie no further apart than is told without their medians', () => {
  test.each([2, 3, 4, 5])('of %i probes', (count) => {
    fc.assert(
      fc.property(
        fc.array(filled(reading), { minLength: count, maxLength: count }),
        phases,
        fc.boolean(),
        (probes, phase, withStops) => {
          const table = offsetTable(circuitOf(probes, phase), withStops);
          for (const probe of probes.keys()) {
            const peers = [...probes.keys()].filter((other) => other !== probe);
            const span = spanOf(table.offset(probe, peers));
            expect(table.mostApart(probe, peers)).toBeGreaterThanOrEqual(span);
          }
        },
      ),
      { numRuns: 25 },
    );
  });

  test('a probe that left its neighbours by 3 K is not ruled out, one of the same noise that stayed is', () => {
    const noise = (i: number, step: number): number => 0.1 * ((i * step) % 7);
    const still = Array.from({ length: samples }, (_, i) => noise(i, 3));
    const other = Array.from({ length: samples }, (_, i) => 2 + noise(i, 5));
    const left = still.map((value, i) => (i > 200 ? value + 3 : value));
    const table = offsetTable(circuitOf([still, other, left], new Array(samples).fill(Phase.cooling)));
    expect(table.mostApart(0, [1])).toBeLessThan(1);
    expect(table.mostApart(2, [0, 1])).toBeGreaterThanOrEqual(3);
  });
});
