import { median } from '../../maths/median.ts';
import { normalConsistency } from '../../maths/median-absolute-deviation.ts';
import { theilSenSlope } from '../../maths/theil-sen-slope.ts';
import type { Kelvin, KelvinPerDay } from '../../units/quantities.ts';
import { settings } from './settings.ts';

/** Days from the last day of the series until a level is reached (negative: since); null where no date can be given. */
export interface DaysToLimit {
  readonly days: number | null;
  readonly earliest: number | null;
  readonly latest: number | null;
  /** Fitted level at the end of the series. */
  readonly levelNow: number;
  /** Why there is no date; null when there is one. */
  readonly reason: string | null;
}

/**
 * Carries a rise on to a limit: (limit − level) ÷ slope, with the 90 % limits of the slope by Sen's ranks and
 * the error of the level at the end. No date is given for a rise that is too young, has levelled off, may be
 * flat, or would need more than twice the history.
 *
 * @param days the daily level itself (not against neighbours), in the unit of `limit`
 */
export function projectToLimit(
  days: Float64Array,
  limit: number,
  rise: {
    readonly onsetDay: number;
    readonly slope: KelvinPerDay;
    readonly slopeLow: KelvinPerDay;
    readonly slopeHigh: KelvinPerDay;
    readonly levelled: boolean;
  },
): DaysToLimit {
  const { level, error } = levelAtEnd(days, rise.onsetDay, rise.slope);
  const none = (reason: string | null): DaysToLimit => ({
    days: null,
    earliest: null,
    latest: null,
    levelNow: level,
    reason,
  });
  if (level >= limit) return { ...reachedAlready(days, limit, rise.onsetDay), levelNow: level, reason: null };
  if (rise.levelled) return none('it has levelled off below the limit');
  if (days.length - rise.onsetDay < settings.refitDays.value) {
    return none(`fewer than ${settings.refitDays.value} days since it began: no reliable date`);
  }
  if (!(rise.slopeLow > 0)) return none('the slope may be zero: no reliable date');
  const recent = recentSlope(days, rise.onsetDay);
  if (recent < slowingShare * rise.slope) return none('it is slowing down: no reliable date');
  const left: Kelvin = limit - level;
  const reach = settings.projectionReach.value * days.length;
  const expected = left / rise.slope;
  if (!(expected <= reach)) return none('further off than twice the history: no reliable date');
  return {
    days: expected,
    earliest: Math.max(0, (left - error) / rise.slopeHigh),
    latest: (left + error) / rise.slopeLow,
    levelNow: level,
    reason: null,
  };
}

/** Within this many days a daily median says when a level was passed. */
const passedWithin = 1.5;

/** Days (negative) since the level was passed for good; 0 when only the fit is there. */
function reachedAlready(days: Float64Array, limit: number, onsetDay: number) {
  let passed = days.length;
  while (passed > onsetDay && !(days[passed - 1]! < limit)) passed--;
  const ago = Math.min(0, passed - (days.length - 1));
  return { days: ago, earliest: ago - passedWithin, latest: Math.min(0, ago + passedWithin) };
}

/** A rise whose second half goes at less than this share of its whole slope bends towards a level of its own. */
const slowingShare = 0.5;
const leastHalfDays = 4;

/** Slope of the second half of the days since the onset; that of all would say nothing of a bend. NaN when too short. */
function recentSlope(days: Float64Array, onsetDay: number): KelvinPerDay {
  const since = days.subarray(onsetDay);
  const half = since.subarray(since.length >> 1);
  if (half.filter(Number.isFinite).length < leastHalfDays) return Number.NaN;
  return theilSenSlope(
    half.map((_, day) => day),
    half,
  ).slope;
}

/** Level of the fitted line at the last day, and the half width of its 90 % interval. */
function levelAtEnd(days: Float64Array, onsetDay: number, slope: number): { level: number; error: number } {
  const part = days.subarray(onsetDay);
  const safeSlope = Number.isFinite(slope) ? slope : 0;
  const recent = part.subarray(Math.max(0, part.length - 7));
  const offset = part.length - recent.length;
  const left = recent.map((value, day) => value - safeSlope * (day + offset));
  const middle = median(left);
  const scale = normalConsistency * median(left.map((value) => Math.abs(value - middle)));
  const known = Math.max(1, left.filter(Number.isFinite).length);
  return {
    level: middle + safeSlope * (part.length - 1),
    error: (1.645 * 1.2533 * scale) / Math.sqrt(known),
  };
}
