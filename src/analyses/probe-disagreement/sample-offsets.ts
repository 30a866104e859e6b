import { median } from '../../maths/median.ts';
import { type CircuitSignals, Phase } from '../../signals/types.ts';

/** Probe minus the median of its neighbours at each settled sample of `from` to `to`, else NaN. */
export function sampleOffsets(
  signals: CircuitSignals,
  probe: number,
  peers: readonly number[],
  from: number,
  to: number,
): Float64Array {
  const own = signals.circuit.probes[probe]!.record.values;
  const others = peers.map((peer) => signals.circuit.probes[peer]!.record.values);
  const offsets = new Float64Array(to - from).fill(Number.NaN);
  for (let i = from; i < to; i++) {
    if (signals.phase[i] !== Phase.cooling) continue;
    offsets[i - from] = own[i]! - middleOf(others, i);
  }
  return offsets;
}

function middleOf(records: readonly Float64Array[], index: number): number {
  if (records.length === 1) return records[0]![index]!;
  if (records.length === 2) return (records[0]![index]! + records[1]![index]!) / 2;
  return median(records.map((values) => values[index]!));
}
