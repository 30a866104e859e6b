import { median } from '../../maths/median.ts';
import { dayAt, samplesIn } from '../../model/grid.ts';
import type { Log } from '../../model/log.ts';
import { targetAt } from '../../model/record.ts';
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
  const pressure = group.group.pressure?.values;
  if (pressure === undefined) return [];
  const reference = referenceOf(group, log);
  const reach = samplesIn(log.grid, reachMinutes);
  const shortest = samplesIn(log.grid, settings.visitMinutes.value);
  const visits: { from: number; to: number; depth: number }[] = [];
  const shared = defrostingTogether(members, pressure.length);
  let from = -1;
  let depth = 1;
  for (let i = 0; i <= pressure.length; i++) {
    const share = i < pressure.length ? pressure[i]! / reference(i) : 1;
    if (share < settings.visitDepth.value) {
      if (from < 0) from = i;
      depth = Math.min(depth, share);
    } else if (from >= 0) {
      const last = visits.at(-1);
      if (isDefrost(shared, from, i)) {
        // The machines drew the group down because its coils were shut for their defrost.
      } else if (last !== undefined && from - last.to < reach && i - from >= shortest / 4) {
        last.to = i;
        last.depth = Math.min(last.depth, depth);
      } else if (i - from >= shortest) visits.push({ from, to: i, depth });
      from = -1;
      depth = 1;
    }
  }
  return visits.map((visit) => ({ ...visit, circuitsOff: shareOff(visit, members, reach) }));
}

/** 1 at samples at which at least half of the circuits defrost. By its air alone a circuit that is shut does so, too. */
function defrostingTogether(members: readonly CircuitSignals[], count: number): Uint8Array {
  const together = new Uint8Array(count);
  const told = members.filter(({ defrostSource }) => defrostSource !== 'shape');
  for (let i = 0; i < count; i++) {
    let defrosting = 0;
    for (const { phase } of told) if (phase[i] === Phase.defrost) defrosting++;
    if (defrosting > 0 && 2 * defrosting >= members.length) together[i] = 1;
  }
  return together;
}

function isDefrost(together: Uint8Array, from: number, to: number): boolean {
  let defrosting = 0;
  for (let i = from; i < to; i++) defrosting += together[i]!;
  return 2 * defrosting >= to - from;
}

/** Days before a sample that tell what was usual then: whoever pulls a group down may leave it at another level. */
const daysBefore = 3;
/** Who pulls a group down lowers its target for it; one that floats is seldom further under the usual suction than this share. */
const targetShare = 0.9;

function referenceOf(group: GroupSignals, { calendar }: Log): (sample: number) => number {
  const target = group.group.pressureSetPoint;
  const overall = median(group.suction);
  const usual = group.suction.map((_, day) =>
    median(group.suction.subarray(Math.max(0, day - daysBefore), day)),
  );
  return (sample) => {
    const value = targetAt(target, sample);
    const then = usual[dayAt(calendar, sample)]! || overall;
    return Number.isNaN(value) ? then : Math.max(value, targetShare * then);
  };
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
