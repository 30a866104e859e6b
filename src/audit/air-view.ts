import { settledReadings } from '../figures/block-readings.ts';
import { normLearner } from '../norms/learn-norms.ts';
import type { Norm } from '../norms/norm.ts';
import type { CircuitSignals } from '../signals/types.ts';
import type { MonthScope } from './scope.ts';
import { type SettledAir, settledAir } from './settled-air.ts';

/** What is read from the settled air of all circuits. */
export interface AirView {
  /** Over the month. */
  readonly settled: ReadonlyMap<CircuitSignals, SettledAir>;
  /** Of the whole history, those of the suction groups among them. */
  readonly norms: readonly Norm[];
}

const made = new WeakMap<MonthScope, AirView>();

/** Made once for all tables and reports; the readings of a circuit are counted once and let go. */
export function airView(scope: MonthScope): AirView {
  const known = made.get(scope) ?? makeView(scope);
  made.set(scope, known);
  return known;
}

function makeView({ signals, diagnosis, month }: MonthScope): AirView {
  const learner = normLearner(signals, diagnosis.findings);
  const settled = new Map<CircuitSignals, SettledAir>();
  const norms = signals.circuits.flatMap((circuit) => {
    const readings = settledReadings(circuit, learner.blocks);
    settled.set(circuit, settledAir(circuit, readings, learner.blocks, month));
    return learner.ofCircuit(circuit, readings);
  });
  return { settled, norms: [...norms, ...learner.ofGroups()] };
}
