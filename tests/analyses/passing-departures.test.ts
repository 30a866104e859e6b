import { expect, it } from 'vitest';
import { analyse } from '../../src/analyses/probe-disagreement/index.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { type Curve, handMadeStore, still } from './support/hand-made-store.ts';

function seen(probes: readonly Curve[]) {
  const signals = computeSignals(handMadeStore({ days: 16, circuits: [{ id: 'M01', probes }] }));
  return analyse(signals.circuits[0]!, signals.groups[0]!, signals).evidence;
}

/** Day and share of the six hours between the starts of two defrosts. */
const sinceDefrost = (day: number): number => ((day * 1440 - 300 + 360) % 360) / 360;

/** Every second stretch between defrosts. */
const isSpared = (day: number): boolean => Math.floor((day * 1440 + 60) / 360) % 2 === 1;

it('an end that warms as its coil ices and is back after each defrost does not jump as a bad contact', () => {
  const ices: Curve = (day, defrost) =>
    day < 7 || defrost > 0 || isSpared(day) ? 0 : 6 * Math.min(1, Math.max(0, 8 * (sinceDefrost(day) - 0.4)));
  const found = seen([still, ices, still]);
  expect(found.map(({ probe }) => probe)).toEqual(['M01 air B']);
  expect(found[0]!.features.loose ?? 0).toBe(0);
});

it('a lead that comes loose for hours in the middle of settled air jumps', () => {
  const loose: Curve = (day) => (day >= 7 && day % 1 > 0.08 && day % 1 < 0.19 ? 9 : 0);
  const found = seen([still, loose, still]);
  expect(found).toHaveLength(1);
  expect(found[0]!.features).toMatchObject({ jumps: 1, loose: 1 });
});
