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
  if (signals.facts[probe]!.known === own.length) return null;
  const others = peers.map((peer) => signals.circuit.probes[peer]!.record.values);
  const least = samplesIn(signals.log.grid, settings.silentHours.value * 60);
  const begin = nextReading(own, 0);
  if (begin === own.length) return null;
  let best: { from: number; to: number } | null = null;
  let alone = 0;
  let firstAlone = -1;
  for (let from = nextGap(own, begin), to = from; from < own.length; from = nextGap(own, to)) {
    to = nextReading(own, from);
    for (let i = from; i < to; i++) {
      if (others.some((other) => Number.isNaN(other[i]!))) continue;
      alone++;
      if (firstAlone < 0) firstAlone = i;
    }
    if (to - from >= least && aloneShare(others, from, to) > 0.8) {
      if (best === null || to - from > best.to - best.from) best = { from, to };
    }
  }
  if (best === null) return null;
  return { ...best, share: alone / (own.length - firstAlone) };
}

/** First sample from `at` on that holds no reading; the length where all do. */
function nextGap(values: Float64Array, at: number): number {
  while (at < values.length && !Number.isNaN(values[at]!)) at++;
  return at;
}

function nextReading(values: Float64Array, at: number): number {
  while (at < values.length && Number.isNaN(values[at]!)) at++;
  return at;
}

function aloneShare(others: readonly Float64Array[], from: number, to: number): number {
  let alive = 0;
  for (let i = from; i < to; i++) if (others.some((other) => !Number.isNaN(other[i]!))) alive++;
  return alive / (to - from);
}
