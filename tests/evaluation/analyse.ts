import { headerOf } from '../../sample-logs/maker/export/cells.ts';
import type { Dialect } from '../../sample-logs/maker/export/dialect.ts';
import type { SimulatedPoint, SimulatedStore } from '../../sample-logs/maker/simulated-store.ts';
import { toLog } from '../../sample-logs/maker/to-log.ts';
import { diagnose } from '../../src/diagnosis/diagnose.ts';
import type { Diagnosis } from '../../src/model/finding.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';

/** Name of a point as the importer will know it. */
export function pointName(point: SimulatedPoint, dialect: Dialect): string {
  const wide = dialect.layout === 'wide' || dialect.layout === 'file-a-circuit';
  return wide ? headerOf(point, dialect) : dialect.naming(point);
}

/** Signals and diagnosis without the importer, on the history up to `untilMs`: for the many cuts of the early-detection search. */
export function diagnoseCut(store: SimulatedStore, dialect: Dialect, untilMs: number): Diagnosis {
  const count = Math.min(store.count, Math.floor((untilMs - store.startMs) / store.stepMs));
  const { logging, without } = dialect;
  const naming = (point: SimulatedPoint): string => pointName(point, dialect);
  return diagnose(computeSignals(toLog({ ...store, count }, { logging, without, naming })));
}
