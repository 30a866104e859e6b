import { describe, expect, it } from 'vitest';
import { analyse } from '../../src/analyses/probe-disagreement/index.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { type Curve, handMadeStore, still } from './support/hand-made-store.ts';

const onset = 8.3;
/** A slow unrest of its own, K, of `size` before the onset and `grown` times as much since. */
const restless =
  (size: number, perDay: number, grown = 1): Curve =>
  (day) =>
    size * (day < onset ? 1 : grown) * Math.sin(2 * Math.PI * perDay * day);
const sum =
  (...curves: Curve[]): Curve =>
  (day, defrost) =>
    curves.reduce((total, curve) => total + curve(day, defrost), 0);
const since =
  (offset: (day: number, defrost: number) => number): Curve =>
  (day, defrost) =>
    day < onset ? 0 : offset(day, defrost);

function featuresOf(...probes: readonly Curve[]) {
  const signals = computeSignals(handMadeStore({ days: 18, circuits: [{ id: 'M01', probes }] }));
  const { evidence } = analyse(signals.circuits[0]!, null, signals);
  return evidence.find(({ probe }) => probe === 'M01 air B')!.features;
}

describe('an offset that came within an hour', () => {
  const calm = [restless(0.1, 3.1), restless(0.1, 4.3), restless(0.1, 5.7)] as const;

  it('is the same at every moment and no more restless where it is added to the reading', () => {
    const features = featuresOf(
      calm[0],
      sum(
        calm[1],
        since(() => 3),
      ),
      calm[2],
    );
    expect(features.inconstancy).toBeLessThan(0.05);
    expect(features.wanderRatio).toBeGreaterThan(0.85);
    expect(features.wanderRatio).toBeLessThan(1.15);
  });

  it.each([
    ['grows while the coil takes no heat', 0.3],
    ['partly closes there', -0.3],
  ])('is inconstant where it %s', (_, inDefrost) => {
    const leak = since((_day, defrost) => 3 * (1 + inDefrost * defrost));
    const features = featuresOf(calm[0], sum(calm[1], leak), calm[2]);
    expect(features.inconstancy).toBeGreaterThan(0.12);
    expect(features.inconstancy! - features.inconstancyError!).toBeGreaterThan(0.05);
  });

  it('is restless where what comes in moves with the doors', () => {
    const draught = since((day) => 3 * (1 + 0.1 * Math.sin(2 * Math.PI * 5 * day)));
    const features = featuresOf(calm[0], sum(calm[1], draught), calm[2]);
    expect(features.wanderRatio).toBeGreaterThan(1.6);
    expect(features.wanderRatio! - 2 * features.wanderRatioError!).toBeGreaterThan(1.15);
  });

  it('is not called restless for an unrest that came to all its neighbours alike', () => {
    const grown = [restless(0.1, 3.1, 2.5), restless(0.1, 4.3, 2.5), restless(0.1, 5.7, 2.5)] as const;
    const features = featuresOf(
      grown[0],
      sum(
        grown[1],
        since(() => 3),
      ),
      grown[2],
    );
    expect(features.wanderRatio).toBeLessThan(1.3);
  });

  it('has neither figure where nothing is known of the days before', () => {
    const features = featuresOf(still, () => 4, still);
    expect(features.sinceStart).toBe(1);
    expect(features.inconstancy).toBeUndefined();
    expect(features.wanderRatio).toBeUndefined();
  });
});
