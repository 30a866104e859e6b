import { expect, it } from 'vitest';
import { comparisonOfDays } from '../../src/analyses/probe-disagreement/comparison.ts';
import { spill } from '../../src/analyses/probe-disagreement/spill.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { type Curve, handMadeStore, still } from './support/hand-made-store.ts';

const by =
  (kelvin: number): Curve =>
  (day) =>
    day < 8 ? 0 : kelvin;

function spillOf(probes: readonly Curve[], place: number) {
  const store = handMadeStore({ days: 16, circuits: [{ id: 'M01', probes }] });
  const compared = comparisonOfDays(store.calendar, { from: 0, to: 8 }, { from: 8, to: 16 });
  const peers = probes.map((_, i) => i).filter((i) => i !== place);
  return spill(computeSignals(store).circuits[0]!, place, peers, compared, 3);
}

it('is the share of a rise that reaches the place beside it', () => {
  const { spill: share, spillError } = spillOf([by(3), by(0.6), still, still], 0);
  expect(share).toBeCloseTo(0.2, 1);
  expect(spillError).toBeLessThan(0.05);
});

it('is nothing where the control cools all neighbours of a false reading alike', () => {
  expect(spillOf([by(-1), by(-1), by(2), by(-1)], 2).spill).toBeCloseTo(0, 1);
});

it('goes by the places along the line-up, and is left out where every neighbour is beside it', () => {
  expect(spillOf([by(0.6), by(3), by(0.6)], 1)).toEqual({});
  expect(spillOf([by(3), still], 0)).toEqual({});
});
