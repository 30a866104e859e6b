import { expect, test } from 'vitest';
import { judge } from '../../src/diagnosis/judge.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { handMadeStore, still } from '../analyses/support/hand-made-store.ts';
import { recovery } from './support.ts';

/** First cause of a defrost that hardly warms, where nothing says how the circuit is defrosted. */
function firstCause(setPoint: number): string {
  const store = handMadeStore({ days: 14, circuits: [{ id: 'M01', probes: [still, still], setPoint }] });
  const circuits = store.circuits.map((circuit) => ({
    ...circuit,
    defrost: { ...circuit.defrost, kind: null },
  }));
  const group = store.suctionGroups.map((one) => ({ ...one, class: null }));
  const signals = computeSignals({ ...store, circuits, suctionGroups: group });
  const weak = recovery({ shape: 'weak-rise', certainty: 0.8 });
  const [finding] = judge(signals, { evidence: [weak], abstentions: [] }).findings;
  return finding!.causes[0]!.cause;
}

// Chilled cases are mostly defrosted with the valve shut and the fans on, frozen ones by heat: common practice, no source.
test('a chilled circuit whose defrosts hardly warm holds ice; a frozen one lacks its heat', () => {
  expect(firstCause(1)).toBe('airflow-or-ice');
  expect(firstCause(-1.5)).toBe('airflow-or-ice');
  expect(firstCause(-20)).toBe('defrost-heat');
});
