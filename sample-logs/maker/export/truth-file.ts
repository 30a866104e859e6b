import type { SimulatedStore } from '../simulated-store.ts';
import { headerOf } from './cells.ts';
import type { Dialect } from './dialect.ts';

/** The truth beside an export, as JSON: what was planted, where, since when. */
export function truthFileText(store: SimulatedStore, dialect: Dialect): string {
  const wide = dialect.layout === 'wide' || dialect.layout === 'file-a-circuit';
  const iso = (epochMs: number | null): string | null =>
    epochMs === null ? null : new Date(epochMs).toISOString();
  const truth = {
    simulator: store.truth.simulator,
    seed: store.truth.seed,
    faults: store.truth.faults.map((fault) => {
      const circuit = store.circuits.find(({ id }) => id === fault.circuit);
      const point = circuit === undefined || fault.probe === null ? null : circuit.air[fault.probe]!;
      return {
        ...fault,
        probe: point === null ? null : wide ? headerOf(point, dialect) : dialect.naming(point),
        onset: iso(fault.onset),
        end: iso(fault.end),
        size: Math.round(fault.size * 100) / 100,
        reachedThree: iso(fault.reachedThree),
      };
    }),
    lookAlikes: store.truth.lookAlikes.map((one) => ({ ...one, from: iso(one.from), to: iso(one.to) })),
  };
  return `${JSON.stringify(truth, null, 2)}\n`;
}
