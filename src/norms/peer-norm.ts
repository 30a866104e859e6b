import { median } from '../maths/median.ts';
import type { Signals } from '../signals/types.ts';
import type { Norm } from './norm.ts';

/** What the peers on the same suction group do, since a norm can learn a fault. */
export interface PeerRange {
  readonly circuits: number;
  readonly p10: number;
  readonly p90: number;
}

/**
 * The middle of the peers' own ranges over whole days, one vote a circuit. Air is compared by its distance from the
 * set point of its circuit and given back at the set point of this one. Null for fewer than two peers.
 */
export function peerRange(norm: Norm, norms: readonly Norm[], signals: Signals): PeerRange | null {
  if (norm.circuit === null || norm.suctionGroup === null || norm.id === 'offset') return null;
  const setPointOf = (id: string): number =>
    norm.id === 'air' ? median(signals.circuits.find(({ circuit }) => circuit.id === id)?.setPoint ?? []) : 0;
  const peers = new Map<string, { low: number[]; high: number[] }>();
  for (const other of norms) {
    if (other.id !== norm.id || other.suctionGroup !== norm.suctionGroup) continue;
    if (other.circuit === null || other.circuit === norm.circuit) continue;
    const whole = other.cells.find(({ dayType, block }) => dayType === 'any' && block === null);
    const base = setPointOf(other.circuit);
    if (whole === undefined || Number.isNaN(base)) continue;
    const entry = peers.get(other.circuit) ?? { low: [], high: [] };
    entry.low.push(whole.p10 - base);
    entry.high.push(whole.p90 - base);
    peers.set(other.circuit, entry);
  }
  const own = setPointOf(norm.circuit);
  if (peers.size < 2 || Number.isNaN(own)) return null;
  const entries = [...peers.values()];
  return {
    circuits: peers.size,
    p10: own + median(entries.map(({ low }) => median(low))),
    p90: own + median(entries.map(({ high }) => median(high))),
  };
}
