import { median } from '../maths/median.ts';
import { dayAt, indexAt, timeAt } from '../model/grid.ts';
import type { CircuitSignals, Signals } from '../signals/types.ts';
import type { EpochMs, Kelvin } from '../units/quantities.ts';
import { type BeyondRack, beyondRack, ownTrouble } from './beyond-rack.ts';
import { isLonger, isRecovery, recoveryShapes } from './circuit-rules.ts';
import { warmsItsCircuits } from './group-rules.ts';
import { recoveredUntil } from './recovered-until.ts';
import { isEmpty, starvedBy } from './starved-circuits.ts';
import type { Trouble } from './trouble.ts';

const dayMs = 86_400_000;
const slackMs = 2 * dayMs;
/** The start of a trend, of a circuit or of a rack that runs out of liquid, is known less well than that of a step. */
const trendSlackMs = 7 * dayMs;
const trendShapes: readonly string[] = ['creep', 'duty'];
/** A member that moved this much with the rack is one of its circuits even where it raised no flag, K. */
const movedWith = 0.55;

/** A rise that stood at less than this share of itself just before the rack failed came with the rack. */
const shareBefore = 0.25;
const daysBefore = 3;
/** How it stands by the end: by the median of so many days. */
const daysNow = 5;
/** What creeps, or began while nothing was logged, is dated when it has risen: the day before that belongs to it. */
const datedLate = 1;
/** A valve that had not come half of its way when the rack failed, and has since, was driven by the rack. */
const shareOwn = 0.5;
/** A valve that feeds so much of the time has no reserve. */
const fullDuty = 0.9;

/** A coil that is warm to begin with reaches the end temperature of its defrost sooner. */
const warmShapes: readonly string[] = [...recoveryShapes, 'ended-early'];
/** Racks whose suction stands elsewhere since: they need warm nothing to show in superheat and in the length of defrosts. */
const movedShapes: readonly string[] = ['target-left', 'target-lowered', 'low', 'float-stopped'];

/** A rise at once is dated to the hour, and so is a rack that fails. */
const hoursAheadMs = 3 * 3_600_000;

const coverable: readonly Trouble['scope'][] = ['whole-circuit', 'cycling', 'superheat', 'one-probe'];

/**
 * A rack that cannot hold its pressure warms all it feeds: one finding for the rack stands for what its circuits
 * would each be flagged for, when they began with it. So it does for superheat, read against that pressure, and for defrosts
 * that run somewhat longer, as coils do that are fed all the time or colder. A probe that is far from its own neighbours keeps
 * its flag, and so do defrosts that heat weakly or do not come: no pressure does that to a heated coil, but it changes the frost of one
 * that store air thaws, and hides those that only the air tells. A circuit that is warmer than its rack can have made it keeps its
 * flag, too. A receiver that is nearly empty stands for circuits that want for liquid since, where a quarter of them do, two at least.
 */
export function coverByRack(
  signals: Signals,
  troubles: readonly Trouble[],
  isReal: (rack: Trouble) => boolean,
): Trouble[] {
  let open = [...troubles];
  const racks = troubles.filter(
    (one) => one.scope === 'rack' && (movesItsCircuits(one) || isEmpty(one)) && isReal(one),
  );
  for (const rack of racks) {
    const members = rack.group?.members ?? [];
    const starved = starvedBy(
      signals,
      rack,
      open,
      (one) => one.lead.onset >= rack.lead.onset - slackMs || cameWithRack(signals, one, rack),
    );
    const own = new Map(open.map((one) => [one, ownShare(signals, one, rack)] as const));
    const covered = open.filter(
      (one) => starved.includes(one) || (own.get(one) === null && isCovered(signals, one, rack, members)),
    );
    const ahead = open
      .filter((one) => own.get(one) !== null || overloads(signals, one, rack, members))
      .map(({ lead }) => lead.circuit);
    const warms = warmsItsCircuits(rack);
    const moved = members.filter((id) => warms && !ahead.includes(id) && movedMember(signals, rack, id));
    const flagged = covered.map((one) => one.lead.circuit!);
    const covers = [
      ...members.filter((id) => moved.includes(id) || flagged.includes(id)),
      ...new Set(flagged.filter((id) => !members.includes(id))),
    ];
    open = open
      .filter((one) => !covered.includes(one))
      .map((one) => (one === rack ? { ...rack, covers } : withOwn(one, own.get(one) ?? null)));
  }
  return open;
}

function withOwn(one: Trouble, beyond: BeyondRack | null): Trouble {
  return beyond === null ? one : { ...one, beyondRack: beyond };
}

/** What warms a circuit as a whole, makes it slow to come back or seem off, beyond what its rack can have done; null where nothing does. */
function ownShare(signals: Signals, one: Trouble, rack: Trouble): BeyondRack | null {
  const isOfAir =
    one.scope === 'whole-circuit' || isSeenStill(one) || (one.scope === 'defrost' && isRecovery(one));
  return isOfAir && warmsItsCircuits(rack) ? beyondRack(signals, one, rack) : null;
}

function movesItsCircuits(rack: Trouble): boolean {
  return warmsItsCircuits(rack) || movesFrost(rack);
}

/** A coil that is fed at another pressure carries another frost into its defrosts. */
function movesFrost(rack: Trouble): boolean {
  return rack.evidence.some(({ shape }) => movedShapes.includes(shape));
}

/** No heater can fail on a coil that the air of the store thaws. */
function isOffCycleWeak({ lead, circuit }: Trouble): boolean {
  return lead.shape === 'weak-rise' && circuit?.circuit.defrost.kind === 'off-cycle';
}

/**
 * The one circuit that is warm beside its rack, and was at once and hours before it failed: what warms it, as a door that stands open,
 * is what the rack cannot carry.
 */
function overloads(signals: Signals, one: Trouble, rack: Trouble, members: readonly string[]): boolean {
  return (
    one.scope === 'whole-circuit' &&
    one.lead.features.sudden === 1 &&
    one.lead.onset <= rack.lead.onset - hoursAheadMs &&
    members.every((id) => (id === one.lead.circuit) === movedMember(signals, rack, id))
  );
}

function isCovered(signals: Signals, one: Trouble, rack: Trouble, members: readonly string[]): boolean {
  if (one.lead.circuit === null || !members.includes(one.lead.circuit)) return false;
  if (isUnseenDefrost(one)) {
    const isSince = one.lead.onset >= rack.lead.onset - slackMs;
    return isSince && warmsItsCircuits(rack) && movedMember(signals, rack, one.lead.circuit);
  }
  if (overloads(signals, one, rack, members)) return false;
  if (isSeenStill(one)) return warmsItsCircuits(rack) && standsStillWith(signals, one, rack);
  if (isOffCycleWeak(one)) return movesFrost(rack) && Math.abs(one.lead.onset - rack.lead.onset) <= slackMs;
  if (isLonger(one)) return isLongerWith(one, rack);
  const isShort = warmsItsCircuits(rack) || leavesShort(signals, one, rack);
  if (!isShort && one.scope !== 'superheat' && one.scope !== 'cycling') return false;
  const isWarmth = one.scope === 'defrost' && warmShapes.includes(one.lead.shape);
  if (!isWarmth && !coverable.includes(one.scope)) return false;
  const isSlow = trendShapes.includes(one.lead.shape) || rack.lead.shape === 'short-of-liquid';
  const isTrend = isWarmth || (isSlow && one.scope !== 'one-probe') || cameByDay(signals, one, rack);
  const slack = isTrend ? trendSlackMs : slackMs;
  const since = one.scope === 'superheat' ? startOfDay(signals, rack) : rack.lead.onset;
  if (one.lead.onset < since - slack && !cameWithRack(signals, one, rack)) return false;
  if (rack.lead.end !== null && one.lead.onset > rack.lead.end + slackMs) return false;
  if (one.scope !== 'one-probe') return true;
  const apart = Math.abs(one.lead.features.shift ?? one.lead.features.rise ?? 0);
  return apart < ownTrouble || isPassedUnevenness(signals, one, apart, rack);
}

/**
 * A float that no longer comes down for the case that asks for most leaves that one somewhat warm, its valve open, or its air late after
 * defrost.
 */
function leavesShort({ log }: Signals, one: Trouble, rack: Trouble): boolean {
  const { shape, onset, features } = one.lead;
  if (!rack.evidence.some((seen) => seen.shape === 'float-stopped')) return false;
  const isSince = shape === 'duty' || onset >= rack.lead.onset - slackMs;
  if (isRecovery(one)) {
    return isSince || recoveredUntil(dayAt(log.calendar, indexAt(log.grid, rack.lead.onset)), one);
  }
  return isSince && one.scope === 'whole-circuit' && (features.rise ?? 0) < ownTrouble;
}

/** Superheat is a figure of the day: it is known no better than by the day on which it was high. */
function startOfDay({ log }: Signals, { lead }: Trouble): EpochMs {
  return timeAt(log.grid, log.calendar.days[dayAt(log.calendar, indexAt(log.grid, lead.onset))]!.from);
}

/** Defrosts that the air alone tells are hidden in air that is warm all the time. */
function isUnseenDefrost({ lead, circuit }: Trouble): boolean {
  return lead.shape === 'missed' && circuit?.defrostSource === 'shape';
}

/**
 * A rack that is short in the busy hours warms in them first: air that is warm by day alone, and had made less than half of its way from
 * the nights when the rack was seen to fail.
 */
function cameByDay({ log }: Signals, { lead, circuit }: Trouble, rack: Trouble): boolean {
  if (lead.shape !== 'trading-hours' || circuit === null) return false;
  const day = dayAt(log.calendar, indexAt(log.grid, rack.lead.onset));
  const overNight = circuit.level.map((_, d) =>
    median(circuit.probes.map((probe) => probe.day[d]! - probe.night[d]!)),
  );
  const usual = median(overNight.subarray(0, Math.max(daysBefore, Math.ceil(day / 2))));
  const before = median(overNight.subarray(Math.max(0, day - daysBefore), day));
  const now = median(overNight.subarray(Math.max(day + 1, overNight.length - daysNow)));
  return before - usual < shareOwn * (now - usual);
}

/** Off by air alone that no longer cycles: a coil that is fed all the time stands as still. */
function isSeenStill({ scope, lead }: Trouble): boolean {
  const { still, valveSeen, defrostsMissed } = lead.features;
  return (
    scope === 'left-off' && lead.shape === 'off' && still === 1 && valveSeen === 0 && defrostsMissed === 0
  );
}

/** Within two days of it; coils that liquid leaves one by one are longer in defrost some days later. */
function isLongerWith({ lead }: Trouble, rack: Trouble): boolean {
  const later = rack.lead.shape === 'short-of-liquid' ? trendSlackMs : slackMs;
  return lead.onset >= rack.lead.onset - slackMs && lead.onset <= rack.lead.onset + later;
}

/** Since the rack failed, and its air is known to the last: one that is warm beyond all its days may as well be off. */
function standsStillWith({ log }: Signals, { lead }: Trouble, rack: Trouble): boolean {
  const departures = rack.group?.departures.get(lead.circuit!);
  if (departures === undefined || lead.onset < rack.lead.onset) return false;
  const day = dayAt(log.calendar, indexAt(log.grid, lead.onset));
  return departures.subarray(Math.max(0, day - 1)).some(Number.isFinite);
}

/** Whatever day its own analysis dates it to: in the last known days before the rack failed it was not there. */
function cameWithRack(signals: Signals, one: Trouble, rack: Trouble): boolean {
  const { log } = signals;
  const day = dayAt(log.calendar, indexAt(log.grid, rack.lead.onset));
  if (one.scope === 'defrost') return isRecovery(one) && recoveredUntil(day, one);
  const departures = rack.group?.departures.get(one.lead.circuit!);
  if (one.scope !== 'whole-circuit' || departures === undefined) return false;
  if (one.lead.shape === 'duty' && feedsAsItsPeers(signals, day, one, rack)) return true;
  const known = departures.subarray(0, Math.max(0, day - datedLate)).filter(Number.isFinite);
  const before = median(known.subarray(-daysBefore));
  const since = median(departures.subarray(day + 1));
  return since >= movedWith && before < shareBefore * since;
}

/**
 * Its valve feeds all that it can, as those of its peers do, most of that came since the rack failed, and its air is no warmer for it
 * than theirs: a coil that lacks something of its own shows it in the air once no valve has a reserve.
 */
function feedsAsItsPeers(
  signals: Signals,
  day: number,
  { circuit, lead }: Trouble,
  { group }: Trouble,
): boolean {
  const departures = group?.departures.get(lead.circuit!);
  const peers = group?.peers.get(lead.circuit!);
  if (circuit === null || departures === undefined || peers === undefined) return false;
  const others = signals.circuits.filter(
    (other) => other !== circuit && group!.members.includes(other.circuit.id),
  );
  const since = ({ duty }: CircuitSignals): number => median(duty.subarray(day + 1));
  const usual = median(circuit.duty.subarray(0, Math.max(daysBefore, Math.ceil(circuit.duty.length / 3))));
  const before = median(circuit.duty.subarray(Math.max(0, day - daysBefore), day));
  const apart = median(departures.map((own, at) => (at > day ? own - peers[at]! : Number.NaN)));
  return (
    before - usual < shareOwn * (since(circuit) - usual) &&
    median(others.map(since)) >= fullDuty &&
    apart < movedWith
  );
}

/**
 * Probes that parted for some days, no farther than the rack warmed their circuit at its worst, while it did: a coil that it cannot
 * satisfy is not cold alike from end to end.
 */
function isPassedUnevenness(signals: Signals, one: Trouble, apart: Kelvin, rack: Trouble): boolean {
  const isOver = one.evidence.every(({ end }) => end !== null);
  return isOver && one.lead.onset >= rack.lead.onset && apart <= warmthWith(signals, rack, one.lead.circuit!);
}

function movedMember(signals: Signals, rack: Trouble, id: string): boolean {
  return warmthWith(signals, rack, id) >= movedWith;
}

/** How warm a member stood on its warmest day since the rack failed, K over its own level; −∞ where that is not known. */
function warmthWith(signals: Signals, rack: Trouble, id: string): Kelvin {
  const departures = rack.group?.departures.get(id);
  if (departures === undefined) return Number.NEGATIVE_INFINITY;
  const { days } = signals.log.calendar;
  const { grid } = signals.log;
  const end = rack.lead.end ?? Number.POSITIVE_INFINITY;
  let peak = Number.NEGATIVE_INFINITY;
  days.forEach((day, i) => {
    const middle = grid.startMs + ((day.from + day.to) / 2) * grid.stepMs;
    if (middle >= rack.lead.onset && middle <= end && departures[i]! > peak) peak = departures[i]!;
  });
  return peak;
}
