import { median } from '../../maths/median.ts';
import { samplesIn } from '../../model/grid.ts';
import type { CircuitSignals, GroupSignals } from '../../signals/types.ts';
import { type Comparison, wholeDays } from './comparison.ts';

const shortestOffMinutes = 60;
const leastShift = 0.8;

/**
 * Two further tests of a reading. `aboveSuction`: settled air over the saturated suction temperature, K; air
 * colder than the evaporator is impossible. `offOffsetRatio`: the share of the change that is still there when
 * the circuit stands shut long enough for its air to even out; true differences close, an offset stays.
 */
export function plausibility(
  signals: CircuitSignals,
  group: GroupSignals | null,
  probe: number,
  peers: readonly number[],
  compared: Comparison,
  change: { readonly before: number; readonly after: number },
): { [feature: string]: number } {
  const features: { [feature: string]: number } = {};
  if (group !== null) {
    const margins: number[] = [];
    const days = wholeDays(signals.log.calendar, compared.now);
    for (let day = days.from; day < days.to; day++) {
      margins.push(signals.probes[probe]!.median[day]! - group.saturatedSuction[day]!);
    }
    const margin = median(margins);
    if (Number.isFinite(margin)) features.aboveSuction = margin;
  }
  const shift = change.after - change.before;
  const offset = offsetWhileOff(signals, probe, peers, compared);
  if (Number.isFinite(offset) && Math.abs(shift) >= leastShift) {
    features.offOffsetRatio = (offset - change.before) / shift;
  }
  return features;
}

/** Median offset over the second half of every long stop in the span looked at. */
function offsetWhileOff(
  signals: CircuitSignals,
  probe: number,
  peers: readonly number[],
  compared: Comparison,
): number {
  const { grid } = signals.log;
  const { from: first, to: last } = compared.now;
  const offsets: number[] = [];
  const valueAt = (one: number, i: number): number => signals.circuit.probes[one]!.record.values[i]!;
  for (const { from, to } of signals.offSpells) {
    if (from < first || to > last || to - from < samplesIn(grid, shortestOffMinutes)) continue;
    for (let i = (from + to) >> 1; i < to; i++) {
      offsets.push(valueAt(probe, i) - median(peers.map((peer) => valueAt(peer, i))));
    }
  }
  return median(offsets);
}
