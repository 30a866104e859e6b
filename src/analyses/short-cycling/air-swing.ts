import { median } from '../../maths/median.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import type { Kelvin } from '../../units/quantities.ts';

/** The air must swing by at least this, K, and by three logging steps, before a narrower swing can be told. */
const plainSwing: Kelvin = 0.8;

/** Swing of the air on each day, K: the median of the usable probes. */
export function airSwing({ probes, usable, level }: CircuitSignals): Float64Array {
  const chosen = probes.filter((_, i) => usable[i]);
  return level.map((_, day) => median(chosen.map((probe) => probe.swing[day]!)));
}

export function leastSwing({ circuit }: CircuitSignals): Kelvin {
  return Math.max(plainSwing, 3 * Math.max(...circuit.probes.map((probe) => probe.record.resolution)));
}
