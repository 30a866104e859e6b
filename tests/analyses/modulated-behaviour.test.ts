import { expect, test } from 'vitest';
import { behaviour } from '../../src/analyses/probe-disagreement/behaviour.ts';
import { comparisonOfDays } from '../../src/analyses/probe-disagreement/comparison.ts';
import { offsetTable } from '../../src/analyses/probe-disagreement/offset-table.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { handMadeStore, still } from './support/hand-made-store.ts';

const store = handMadeStore({
  days: 16,
  circuits: [{ id: 'M01', probes: [(day) => Math.max(0, day - 8) / 3, still, still] }],
});
const compared = comparisonOfDays(store.calendar, { from: 0, to: 7 }, { from: 12, to: 16 });

function featuresWith(quantity: 'status' | 'fraction') {
  const circuits = store.circuits.map((circuit) => ({
    ...circuit,
    valve: { ...circuit.valve!, quantity },
  }));
  const signals = computeSignals({ ...store, circuits }).circuits[0]!;
  return behaviour(signals, offsetTable(signals), 0, [1, 2], compared);
}

test('only a valve that opens and shuts makes cycles whose shape tells a lie from warm air', () => {
  expect(featuresWith('status')).toMatchObject({
    swingRatio: expect.any(Number),
    phaseCorrelation: expect.any(Number),
  });
  const regulated = featuresWith('fraction');
  expect(regulated.swingRatio).toBeUndefined();
  expect(regulated.phaseCorrelation).toBeUndefined();
  expect(regulated.defrostOffsetRatio).toBeCloseTo(featuresWith('status').defrostOffsetRatio!, 1);
});
