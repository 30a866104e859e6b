import { expect } from 'vitest';
import { judge } from '../../src/diagnosis/judge.ts';
import type { Evidence } from '../../src/model/evidence.ts';
import type { Finding } from '../../src/model/finding.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import type { Signals } from '../../src/signals/types.ts';
import { type HandMadeCircuit, handMadeStore, startMs, still } from '../analyses/support/hand-made-store.ts';

export const dayMs = 86_400_000;
export const onDay = (day: number): number => startMs + day * dayMs;

/** A group of three circuits with three probes each, quiet but for what is given of one. */
export const threeCircuits = (
  days: number,
  given: (id: string) => Partial<HandMadeCircuit> = () => ({}),
): Signals =>
  computeSignals(
    handMadeStore({
      days,
      circuits: ['M01', 'M02', 'M03'].map((id) => ({ id, probes: [still, still, still], ...given(id) })),
    }),
  );

export const quietSignals: Signals = threeCircuits(14);

/** A piece of evidence by what matters in a test; the rest is plain. */
export function evidence(given: Partial<Evidence>): Evidence {
  const probe = given.probe ?? null;
  return {
    analysis: 'probe-disagreement',
    kind: 'probe-disagreement',
    circuit: 'M01',
    suctionGroup: 'S1',
    probe,
    points: probe === null ? [] : [probe],
    onset: onDay(5),
    end: null,
    certainty: 0.9,
    measures: [],
    features: {},
    shape: 'step',
    ...given,
  };
}

export const wholeRise = (given: Partial<Evidence> = {}): Evidence =>
  evidence({
    analysis: 'upward-drift',
    kind: 'upward-drift',
    shape: 'creep',
    features: { rise: 3, compared: 1 },
    ...given,
  });

export const recovery = (given: Partial<Evidence> = {}): Evidence =>
  evidence({ analysis: 'defrost-recovery', kind: 'defrost-recovery', shape: 'slow', ...given });

export const rackHigh = (given: Partial<Evidence> = {}): Evidence =>
  evidence({
    analysis: 'rack-pressure',
    kind: 'rack-pressure',
    circuit: null,
    shape: 'capacity-shortfall',
    ...given,
  });

/** What the diagnosis makes of evidence over a store in which nothing else is wrong. */
export const judged = (...seen: Evidence[]) => judge(quietSignals, { evidence: seen, abstentions: [] });
export const findings = (...seen: Evidence[]): readonly Finding[] => judged(...seen).findings;
/** The one finding that evidence comes to. */
export const one = (...seen: Evidence[]): Finding => {
  const all = findings(...seen);
  expect(all).toHaveLength(1);
  return all[0]!;
};
