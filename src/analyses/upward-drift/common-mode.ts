import type { CircuitSignals, GroupSignals } from '../../signals/types.ts';

/** What the other circuits of the suction group did on each day, K against their own baseline; 0 where unknown. */
export function commonMode(signals: CircuitSignals, group: GroupSignals | null): Float64Array {
  const peers = group?.peers.get(signals.circuit.id);
  return signals.level.map((_, day) => {
    const moved = peers?.[day] ?? Number.NaN;
    return Number.isFinite(moved) ? moved : 0;
  });
}
