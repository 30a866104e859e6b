import { median } from '../../maths/median.ts';
import type { LocalDay } from '../../model/grid.ts';
import { samplesIn } from '../../model/grid.ts';
import type { Log } from '../../model/log.ts';
import { type Target, targetAt } from '../../model/record.ts';
import type { CircuitSignals, GroupSignals } from '../../signals/types.ts';
import { Phase } from '../../signals/types.ts';
import { settings } from './settings.ts';

/** A group pumped down by a person: a service visit, not a fault of the rack. */
export interface Visit {
  readonly from: number;
  readonly to: number;
  /** Lowest suction, as a share of the target. */
  readonly depth: number;
  /** Share of the group's circuits that were shut off about then. */
  readonly circuitsOff: number;
}

/** Two pump-downs closer than this are one visit; around a visit nothing else is judged for as long. */
const reachMinutes = 180;

export function serviceVisits(group: GroupSignals, members: readonly CircuitSignals[], log: Log): Visit[] {
  if (group.group.pressure === null) return [];
  const shares = sharesOfUsual(group, group.group.pressure.values, log);
  if (shares === null) return [];
  const reach = samplesIn(log.grid, reachMinutes);
  const shortest = samplesIn(log.grid, settings.visitMinutes.value);
  const visits: { from: number; to: number; depth: number }[] = [];
  let from = -1;
  let depth = 1;
  for (let i = 0; i <= shares.length; i++) {
    const share = i < shares.length ? shares[i]! : 1;
    if (share < settings.visitDepth.value) {
      if (from < 0) from = i;
      depth = Math.min(depth, share);
    } else if (from >= 0) {
      const last = visits.at(-1);
      if (isDefrost(members, from, i)) {
        // The machines drew the group down because its coils were shut for their defrost.
      } else if (last !== undefined && from - last.to < reach && i - from >= shortest / 4) {
        last.to = i;
        last.depth = Math.min(last.depth, depth);
      } else if (i - from >= shortest) visits.push({ from, to: i, depth });
      from = -1;
      depth = 1;
    }
  }
  const longest = samplesIn(log.grid, settings.visitHours.value * 60);
  return visits
    .filter(({ from: start, to }) => to - start <= longest)
    .map((visit) => ({ ...visit, circuitsOff: shareOff(visit, members, reach) }));
}

/** Whether for half of a stretch at least half of the circuits defrost. By its air alone a circuit that is shut does so, too. */
function isDefrost(members: readonly CircuitSignals[], from: number, to: number): boolean {
  const told = members.filter(({ defrostSource }) => defrostSource !== 'shape');
  let together = 0;
  for (let i = from; i < to; i++) {
    let defrosting = 0;
    for (const { phase } of told) if (phase[i] === Phase.defrost) defrosting++;
    if (defrosting > 0 && 2 * defrosting >= members.length) together++;
  }
  return 2 * together >= to - from;
}

/** Days before a sample that tell what was usual then: whoever pulls a group down may leave it at another level. */
const daysBefore = 3;
/** Who pulls a group down lowers its target for it; one that floats is seldom further under the usual suction than this share. */
const targetShare = 0.9;

/**
 * The suction pressure at each sample as a share of its target, or of what was usual on the days before. Null where it never falls
 * as low as in a visit.
 */
function sharesOfUsual(group: GroupSignals, pressure: Float64Array, { calendar }: Log): Float64Array | null {
  const overall = median(group.suction);
  const shares = new Float64Array(pressure.length);
  const lowest = calendar.days.map((day, d) => {
    const before = median(group.suction.subarray(Math.max(0, d - daysBefore), d));
    return sharesOfDay(shares, pressure, group.group.pressureSetPoint, before || overall, day);
  });
  return Math.min(...lowest) < settings.visitDepth.value ? shares : null;
}

/** Writes those of a day, and gives the lowest. */
function sharesOfDay(
  shares: Float64Array,
  pressure: Float64Array,
  target: Target | null,
  usual: number,
  { from, to }: LocalDay,
): number {
  let lowest = Number.POSITIVE_INFINITY;
  for (let i = from; i < to; i++) {
    const value = targetAt(target, i);
    const share = pressure[i]! / (Number.isNaN(value) ? usual : Math.max(value, targetShare * usual));
    shares[i] = share;
    if (share < lowest) lowest = share;
  }
  return lowest;
}

function shareOff(
  visit: { readonly from: number; readonly to: number },
  members: readonly CircuitSignals[],
  reach: number,
): number {
  const off = members.filter((member) =>
    member.offSpells.some((spell) => spell.from < visit.to + reach && spell.to > visit.from - reach),
  );
  return members.length === 0 ? 0 : off.length / members.length;
}

/** The hours in and around the visits. */
export function visitHours(visits: readonly Visit[], log: Log): number[] {
  const hour = samplesIn(log.grid, 60);
  const reach = samplesIn(log.grid, reachMinutes);
  const last = Math.ceil(log.grid.count / hour) - 1;
  return visits.flatMap(({ from, to }) => {
    const first = Math.max(0, Math.floor((from - reach) / hour));
    const until = Math.min(last, Math.floor((to + reach) / hour));
    return Array.from({ length: until - first + 1 }, (_, k) => first + k);
  });
}
