import { median } from '../../maths/median.ts';
import { samplesIn } from '../../model/grid.ts';
import { targetAt } from '../../model/record.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { Phase } from '../../signals/types.ts';
import { settings } from './settings.ts';

export interface WarmShare {
  /** Share of the circuits whose air stands 1.5 °F above its own norm in the hours asked for. */
  readonly share: number;
  /** Median over the circuits of how far. */
  readonly rise: number;
  readonly warm: readonly string[];
}

/** How far the settled air of each circuit stood above its own norm (the hours before `from`) in `hours`. */
export function warmShare(
  members: readonly CircuitSignals[],
  hours: readonly number[],
  from: number,
): WarmShare {
  const rises = members.map((member) => ({ id: member.circuit.id, rise: riseOf(member, hours, from) }));
  const known = rises.filter(({ rise }) => Number.isFinite(rise));
  const warm = known.filter(({ rise }) => rise >= settings.warmRise.value);
  return {
    share: known.length === 0 ? Number.NaN : warm.length / known.length,
    rise: median(known.map(({ rise }) => rise)),
    warm: warm.map(({ id }) => id),
  };
}

function riseOf(member: CircuitSignals, hours: readonly number[], from: number): number {
  const { circuit, air, phase, log } = member;
  const hour = samplesIn(log.grid, 60);
  const level = (k: number) => {
    let sum = 0;
    let known = 0;
    for (let i = k * hour; i < Math.min(log.grid.count, (k + 1) * hour); i++) {
      if (phase[i] !== Phase.cooling && phase[i] !== Phase.off) continue;
      const target = circuit.setPoint === null ? 0 : targetAt(circuit.setPoint, i);
      if (Number.isNaN(air[i]!) || Number.isNaN(target)) continue;
      sum += air[i]! - target;
      known++;
    }
    return known > hour / 4 ? sum / known : Number.NaN;
  };
  const before = median(Array.from({ length: from }, (_, k) => level(k)));
  return median(hours.map(level)) - before;
}
