import { median } from '../maths/median.ts';
import { dayAt, indexAt } from '../model/grid.ts';
import type { Signals } from '../signals/types.ts';
import { recoveryShapes } from './circuit-rules.ts';
import { warmsItsCircuits } from './group-rules.ts';
import type { Trouble } from './trouble.ts';

const dayMs = 86_400_000;
const slackMs = 2 * dayMs;
/** The start of a trend is known less well than that of a step. */
const trendSlackMs = 7 * dayMs;
const trendShapes: readonly string[] = ['creep', 'duty'];
/** A member that moved this much with the rack is one of its circuits even where it raised no flag, K. */
const movedWith = 0.55;
/** Beside a warm rack, a probe this far from its neighbours still has a trouble of its own, K. */
const ownTrouble = 2.2;

/** A rise that stood at less than this share of itself just before the rack failed came with the rack. */
const shareBefore = 0.25;
const daysBefore = 3;

/** A coil that is warm to begin with reaches the end temperature of its defrost sooner. */
const warmShapes: readonly string[] = [...recoveryShapes, 'ended-early'];

const coverable: readonly Trouble['scope'][] = ['whole-circuit', 'cycling', 'superheat', 'one-probe'];

/**
 * A rack that cannot hold its pressure warms all it feeds: one finding for the rack stands for what its circuits
 * would each be flagged for, when they began with it. A probe that is far from its own neighbours keeps its flag, and so
 * do defrosts that heat weakly, run long or do not come: no pressure does that.
 */
export function coverByRack(
  signals: Signals,
  troubles: readonly Trouble[],
  isReal: (rack: Trouble) => boolean,
): Trouble[] {
  let open = withGroupCycles(troubles);
  for (const rack of troubles.filter((one) => one.scope === 'rack' && warmsItsCircuits(one) && isReal(one))) {
    const members = rack.group?.members ?? [];
    const covered = open.filter((one) => isCovered(signals, one, rack, members));
    const moved = members.filter((id) => movedMember(signals, rack, id));
    const flagged = covered.map((one) => one.lead.circuit!);
    const covers = members.filter((id) => moved.includes(id) || flagged.includes(id));
    open = open
      .filter((one) => !covered.includes(one))
      .map((one) => (one === rack ? { ...rack, covers } : one));
  }
  return open;
}

/** Valves that open in step start too often together: the finding of their group stands for those of its circuits. */
function withGroupCycles(troubles: readonly Trouble[]): Trouble[] {
  const inStep = troubles.filter((one) => one.lead.circuit === null && one.lead.shape === 'in-step');
  const coveredBy = (group: Trouble) =>
    troubles.filter(
      ({ scope, lead }) =>
        scope === 'cycling' &&
        lead.circuit !== null &&
        group.group?.members.includes(lead.circuit) === true &&
        Math.abs(lead.onset - group.lead.onset) <= slackMs,
    );
  const covered = new Map(inStep.map((group) => [group, coveredBy(group)]));
  const guests = new Set([...covered.values()].flat());
  return troubles
    .filter((one) => !guests.has(one))
    .map((one) => {
      const circuits = covered.get(one)?.map(({ lead }) => lead.circuit!) ?? [];
      return circuits.length === 0 ? one : { ...one, covers: circuits };
    });
}

function isCovered(signals: Signals, one: Trouble, rack: Trouble, members: readonly string[]): boolean {
  if (one.lead.circuit === null || !members.includes(one.lead.circuit)) return false;
  const isWarmth = one.scope === 'defrost' && warmShapes.includes(one.lead.shape);
  if (!isWarmth && !coverable.includes(one.scope)) return false;
  const isTrend = isWarmth || (trendShapes.includes(one.lead.shape) && one.scope !== 'one-probe');
  const slack = isTrend ? trendSlackMs : slackMs;
  if (one.lead.onset < rack.lead.onset - slack && !cameWithRack(signals, one, rack)) return false;
  if (rack.lead.end !== null && one.lead.onset > rack.lead.end + slackMs) return false;
  if (one.scope !== 'one-probe') return true;
  return Math.abs(one.lead.features.shift ?? one.lead.features.rise ?? 0) < ownTrouble;
}

/** Whatever day its own analysis dates it to: in the last days before the rack failed the rise was not there. */
function cameWithRack({ log }: Signals, one: Trouble, rack: Trouble): boolean {
  const departures = rack.group?.departures.get(one.lead.circuit!);
  if (one.scope !== 'whole-circuit' || departures === undefined) return false;
  const day = dayAt(log.calendar, indexAt(log.grid, rack.lead.onset));
  const before = median(departures.subarray(Math.max(0, day - daysBefore), day));
  const since = median(departures.subarray(day + 1));
  return since >= movedWith && before < shareBefore * since;
}

function movedMember(signals: Signals, rack: Trouble, id: string): boolean {
  const departures = rack.group?.departures.get(id);
  if (departures === undefined) return false;
  const { days } = signals.log.calendar;
  const { grid } = signals.log;
  const end = rack.lead.end ?? Number.POSITIVE_INFINITY;
  let peak = Number.NEGATIVE_INFINITY;
  days.forEach((day, i) => {
    const middle = grid.startMs + ((day.from + day.to) / 2) * grid.stepMs;
    if (middle >= rack.lead.onset && middle <= end && departures[i]! > peak) peak = departures[i]!;
  });
  return peak >= movedWith;
}
