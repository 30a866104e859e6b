import { settings } from '../analyses/rack-pressure/settings.ts';
import { median } from '../maths/median.ts';
import { dayAt, indexAt } from '../model/grid.ts';
import type { GroupSignals, Signals } from '../signals/types.ts';
import type { Kelvin } from '../units/quantities.ts';
import type { Trouble } from './trouble.ts';

/** A circuit this much warmer than its rack can have made it has a trouble of its own, K (4 °F) … */
export const ownTrouble: Kelvin = 2.2;
/** … by the middle of so many days, of which so many are known. */
const daysJudged = 3;
const fewestKnown = 2;
/** The suction is held against the days that the departures of the circuits are held against: the first third, so many at least. */
const fewestBaselineDays = 5;

/** Racks that warm their circuits by the pressure, which bounds by how much. */
const byPressure: readonly string[] = ['high', 'target-raised', 'capacity-shortfall', 'target-left'];

/** How warm a circuit stood in its trouble and how much of that its rack can have done, K, where the difference was largest. */
export interface BeyondRack {
  readonly warmth: Kelvin;
  readonly explained: Kelvin;
}

/**
 * What a circuit has of its own beside a rack that warms it; null where the rack can have done it all, or where that cannot be told.
 *
 * A coil that is fed all it can moves its heat (UA · (T_air − T_evaporating), common practice, no source) at an evaporating temperature that is
 * up by what the suction is up: its air cannot be up by more, less what reserve it had, and one behind a pressure regulator is up by less. Nor by more than
 * the others, where all of them are. Where no pressure is logged only the others tell: it must then be twice as warm as the warmest of
 * them, for they differ in their reserves. Want of liquid has no such bound, for it comes to the far coils first.
 */
export function beyondRack(signals: Signals, one: Trouble, rack: Trouble): BeyondRack | null {
  const { circuit, end } = one.lead;
  const { group } = rack;
  const departures = group?.departures.get(circuit ?? '');
  if (group === null || departures === undefined) return null;
  const dayOf = (at: number): number => dayAt(signals.log.calendar, indexAt(signals.log.grid, at));
  const explained = explainedBy(rack, group, circuit!);
  if (explained === null) return null;
  const last = end === null ? departures.length - 1 : dayOf(end);
  // What leads may be the last that was seen of it.
  const onset = Math.min(...one.evidence.map((seen) => seen.onset));
  let most: BeyondRack | null = null;
  for (let day = dayOf(onset); day <= last; day++) {
    const days = Array.from({ length: Math.min(daysJudged, last + 1 - day) }, (_, i) => day + i);
    const known = days.filter((d) => Number.isFinite(departures[d]! - explained.days[d]!));
    if (known.length < fewestKnown) continue;
    const warmth = median(known.map((d) => departures[d]!));
    const share = median(known.map((d) => explained.days[d]!));
    const beyond = median(known.map((d) => departures[d]! - explained.days[d]!));
    if (beyond < Math.max(ownTrouble, explained.isFromPeers ? share : 0)) continue;
    if (most === null || beyond > most.warmth - most.explained) most = { warmth, explained: share };
  }
  return most;
}

interface Explained {
  /** K a day, never below 0. */
  readonly days: Float64Array;
  readonly isFromPeers: boolean;
}

function explainedBy(rack: Trouble, group: GroupSignals, id: string): Explained | null {
  const has = (shapes: readonly string[]): boolean =>
    rack.evidence.some(({ shape }) => shapes.includes(shape));
  if (has(['short-of-liquid', 'level-low'])) return null;
  if (has(['group-warm'])) {
    const others = [...group.departures].filter(([other]) => other !== id).map(([, days]) => days);
    const warmest = group.suction.map((_, day) =>
      Math.max(0, ...others.map((days) => days[day]!).filter(Number.isFinite)),
    );
    return { days: warmest, isFromPeers: true };
  }
  const rise = suctionRise(group);
  const peers = group.peers.get(id);
  if (!has(byPressure) || rise === null) return null;
  return { days: rise.map((up, day) => Math.max(0, up, peers?.[day] || 0)), isFromPeers: false };
}

/** The saturated suction temperature of each day over its own baseline, K; null where none is logged. */
function suctionRise({ suction, saturatedSuction }: GroupSignals): Float64Array | null {
  const days = saturatedSuction.some(Number.isFinite)
    ? saturatedSuction
    : suction.map((pressure) => Math.log(pressure) / settings.pressurePerKelvin.value);
  const known = days.filter(Number.isFinite);
  if (known.length === 0) return null;
  const usual = median(known.subarray(0, Math.max(fewestBaselineDays, Math.ceil(known.length / 3))));
  return days.map((day) => day - usual);
}
