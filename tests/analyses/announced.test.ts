import { expect, it } from 'vitest';
import { analyse } from '../../src/analyses/probe-disagreement/index.ts';
import type { Evidence } from '../../src/model/evidence.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { type Curve, handMadeStore, startMs, still } from './support/hand-made-store.ts';

const dayMs = 86_400_000;

function seen(probes: readonly Curve[], days = 20): readonly Evidence[] {
  const signals = computeSignals(handMadeStore({ days, circuits: [{ id: 'M01', probes }] }));
  return analyse(signals.circuits[0]!, signals.groups[0]!, signals).evidence;
}

/** Common practice, no source: a coil takes ice for weeks, then freezes shut within hours. */
const freezesShut: Curve = (day) => (day < 6 ? 0 : day < 15.4 ? 0.1 * (day - 6) : 6);
const fanStops: Curve = (day) => (day < 15.4 ? 0 : 6);

it('a leap that a creep announced is dated from the creep, and is one', () => {
  const [found, ...others] = seen([still, freezesShut, still]);
  expect(others).toEqual([]);
  expect(found).toMatchObject({ probe: 'M01 air B', shape: 'creep' });
  expect(found!.features.creeping).toBeGreaterThan(0.9);
  expect(Math.abs(found!.onset - (startMs + 6 * dayMs))).toBeLessThanOrEqual(2 * dayMs);
});

it('a leap out of a flat level stays a step, to the hour', () => {
  const [found] = seen([still, fanStops, still]);
  expect(found).toMatchObject({ probe: 'M01 air B', shape: 'step' });
  expect(Math.abs(found!.onset - (startMs + 15.4 * dayMs))).toBeLessThanOrEqual(2 * 3_600_000);
});

it.each([
  ['the other way', (day: number) => (day < 6 ? 0 : day < 15.4 ? -0.1 * (day - 6) : 6)],
  [
    'and ended a week before',
    (day: number) => Math.min(0.9, Math.max(0, 0.3 * (day - 3))) + (day < 15.4 ? 0 : 6),
  ],
])('a creep %s announces nothing', (_, curve) => {
  expect(seen([still, curve, still])[0]).toMatchObject({ shape: 'step' });
});
