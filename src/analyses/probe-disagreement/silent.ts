import { samplesIn } from '../../model/grid.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { settings } from './settings.ts';

/** A stretch without readings of one probe while all its neighbours were logged. Samples, half open. */
export interface Silence {
  readonly from: number;
  readonly to: number;
  /** Share of the time since the first such stretch in which the probe is missing alone. */
  readonly share: number;
}

/**
 * The longest stretch in which this probe alone has no readings. A cut or shorted lead reads a rail, which the
 * importer rejects; on the record it is silence beside living neighbours. Null for a channel that never read.
 */
export function silence(signals: CircuitSignals, probe: number, peers: readonly number[]): Silence | null {
  const own = signals.circuit.probes[probe]!.record.values;
  const others = peers.map((peer) => signals.circuit.probes[peer]!.record.values);
  const least = samplesIn(signals.log.grid, settings.silentHours.value * 60);
  const begin = own.findIndex((value) => !Number.isNaN(value));
  if (begin < 0) return null;
  let best: { from: number; to: number } | null = null;
  let from = -1;
  let alone = 0;
  let firstAlone = -1;
  for (let i = begin; i <= own.length; i++) {
    const reads = i === own.length || !Number.isNaN(own[i]!);
    if (reads && from < 0) continue;
    if (!reads) {
      if (from < 0) from = i;
      if (!others.some((other) => Number.isNaN(other[i]!))) {
        alone++;
        if (firstAlone < 0) firstAlone = i;
      }
      continue;
    }
    if (from >= 0 && i - from >= least && aloneShare(others, from, i) > 0.8) {
      if (best === null || i - from > best.to - best.from) best = { from, to: i };
    }
    from = -1;
  }
  if (best === null) return null;
  return { ...best, share: alone / (own.length - firstAlone) };
}

function aloneShare(others: readonly Float64Array[], from: number, to: number): number {
  let alive = 0;
  for (let i = from; i < to; i++) if (others.some((other) => !Number.isNaN(other[i]!))) alive++;
  return alive / (to - from);
}
