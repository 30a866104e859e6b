import type { Celsius, Kelvin } from '../../units/quantities.ts';
import { type Pace, paceOf } from './pace.ts';
import { settings } from './settings.ts';

/** Days from the last day of the series until a level is reached (0 and less: since); null where no date can be given. */
export interface DaysToLimit {
  readonly days: number | null;
  readonly earliest: number | null;
  /** Null beside an `earliest`: it may well never get there. */
  readonly latest: number | null;
  /** Fitted level at the end of the series. */
  readonly levelNow: number;
  /** Why there is no date; null when there is one. */
  readonly reason: string | null;
}

/**
 * Carries a rise on to a limit, with a 90 % interval of first reaching it. The pace is followed by a local linear trend
 * (`paceOf`); what lies ahead is its present rate, gathering as creeps do, with a log-normal error that grows with the days
 * ahead: a rate stays above zero and doubles as easily as it halves (first passage of a degradation path, after Lu and Meeker
 * 1993, Technometrics 35:161). How large a rise becomes has no scale of its own: while less than `lateEndShare` of the way is made it may well stop
 * before, and there is no late end. No date is given for a rise that its control still holds, is too young, has levelled off, may be flat, slows down, or
 * would need more than twice the history.
 *
 * @param days the daily level itself (not against neighbours), in the unit of `limit`
 */
export function projectToLimit(
  days: Float64Array,
  limit: number,
  rise: {
    readonly onsetDay: number;
    readonly levelled: boolean;
    /** The control drives the neighbours colder and so keeps most of the rise out of this air. */
    readonly held?: boolean;
  },
): DaysToLimit {
  const known = days.subarray(0, days.findLastIndex(Number.isFinite) + 1);
  const pace = paceOf(known, rise.onsetDay);
  const none = (reason: string): DaysToLimit => ({
    days: null,
    earliest: null,
    latest: null,
    levelNow: pace.level,
    reason,
  });
  if (pace.level >= limit && known.at(-1)! >= limit) {
    return { ...reachedAlready(days, limit, rise.onsetDay), levelNow: pace.level, reason: null };
  }
  if (rise.levelled) return none('it has levelled off below the limit');
  if (rise.held === true)
    return none('its control still holds it, at the cost of its neighbours: no reliable date');
  if (days.length - rise.onsetDay < settings.refitDays.value) {
    return none(`fewer than ${settings.refitDays.value} days since it began: no reliable date`);
  }
  if (!(pace.overall > 0)) return none('the slope may be zero: no reliable date');
  if (!(pace.slope > slowingShare * pace.overall)) return none('it is slowing down: no reliable date');
  const reach = settings.projectionReach.value * days.length;
  const found = firstReached(pace, limit - pace.level, reach);
  const unknown = days.length - known.length;
  if (found.days === null) return none('further off than twice the history: no reliable date');
  const date = Math.max(grid, found.days - unknown);
  const earliest = (found.earliest ?? found.days) - unknown;
  const mayStop = shareMade(pace, limit) < settings.lateEndShare.value;
  const latest = mayStop || found.latest === null ? null : found.latest - unknown;
  return {
    days: date,
    earliest: Math.min(earliest, date - passedWithin),
    latest: latest === null ? null : Math.max(latest, date + passedWithin),
    levelNow: pace.level,
    reason: null,
  };
}

/** A rise that now goes at less than this share of its whole slope bends towards a level of its own. */
const slowingShare = 0.5;
/** 95 % quantile of Student's t with 3 degrees of freedom: rates of creeps change in jumps, which a normal has too few of. */
const heavyQuantile = 2.353;
/** Within this many days a daily median says when a level was passed. */
const passedWithin = 1.5;
/** The date is told to a quarter day; the late end is looked for this many times as far as the date. */
const grid = 0.25;
const lateReach = 4;

/** When the rise is made up: by the likeliest path, and by the upper and the lower edge of where it may then stand if it goes on. */
function firstReached(
  { slope, slopeVariance, levelVariance, scatter }: Pace,
  left: Kelvin,
  reach: number,
): { days: number | null; earliest: number | null; latest: number | null } {
  const wander = settings.paceWander.value ** 2 / 3;
  const atFirst = Math.log(1 + slopeVariance / (slope * slope));
  // A warm day is enough to be first there; that a cold one delays it does not count.
  const above = heavyQuantile * Math.sqrt(levelVariance + scatter * scatter);
  const below = heavyQuantile * Math.sqrt(levelVariance);
  let days: number | null = null;
  let earliest: number | null = null;
  for (let ahead = grid; ahead <= lateReach * reach; ahead += grid) {
    const way: Kelvin = slope * daysAtThisRate(ahead);
    const spread = Math.exp(
      heavyQuantile * Math.sqrt(atFirst + wander * Math.min(ahead, settings.paceDays.value)),
    );
    if (earliest === null && way + Math.hypot(above, way * (spread - 1)) >= left) earliest = ahead;
    if (days === null && way >= left) {
      if (ahead > reach) break;
      days = ahead;
    }
    if (way - Math.hypot(below, way * (1 - 1 / spread)) >= left) return { days, earliest, latest: ahead };
  }
  return { days, earliest, latest: null };
}

/** What part of its way to the limit a rise has made. */
function shareMade({ usual, level }: Pace, limit: Celsius): number {
  return (level - usual) / (limit - usual);
}

/** Days at the present rate that go as far as `ahead` days do while it gathers, for the first of them. */
function daysAtThisRate(ahead: number): number {
  const gain = settings.paceGain.value;
  const gathering = Math.min(ahead, settings.paceDays.value);
  return Math.expm1(gain * gathering) / gain + (ahead - gathering) * Math.exp(gain * gathering);
}

/** Days (negative) since the level was passed for good; 0 when only the fit is there. */
function reachedAlready(days: Float64Array, limit: number, onsetDay: number) {
  let passed = days.length;
  while (passed > onsetDay && !(days[passed - 1]! < limit)) passed--;
  const ago = Math.min(0, passed - (days.length - 1));
  return { days: ago, earliest: ago - passedWithin, latest: ago + passedWithin };
}
