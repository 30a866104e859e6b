import { median } from '../../maths/median.ts';
import type { Calendar, Grid } from '../../model/grid.ts';
import { samplesIn } from '../../model/grid.ts';
import type { DefrostPlan } from '../../model/log.ts';
import type { Minutes } from '../../units/quantities.ts';
import { sampleAtMinute } from '../local-minutes.ts';
import { liftIn } from './lift.ts';
import type { Stretch } from './stretch.ts';

/** Length of a defrost whose schedule gives only its start (common practice, no source). */
const usualMinutes: { readonly [kind: string]: Minutes } = {
  'off-cycle': 45,
  electric: 40,
  'hot-gas': 20,
};
/** A scheduled defrost came when it lifted the air by this share of the usual lift. */
const seenShare = 0.4;
/** Less than this, in K, is no defrost. */
const leastLift = 0.8;
/** A schedule that fits fewer of its defrosts than this is not the one in force. */
const fittingShare = 0.3;

/**
 * Defrosts at the starts that the site file gives, each confirmed by the air; null when the site file gives none
 * or when the air does not follow them.
 */
export function defrostsFromSchedule(
  plan: DefrostPlan,
  air: Float64Array,
  grid: Grid,
  calendar: Calendar,
): Stretch[] | null {
  if (plan.starts === null || plan.starts.length === 0) return null;
  const minutes = plan.minutes ?? usualMinutes[plan.kind ?? 'off-cycle']!;
  const planned = plan.starts.flatMap((minute) => stretchesAt(minute, minutes, grid, calendar));
  const lifts = planned.map((stretch) => liftIn(air, stretch, grid));
  const usual = median(lifts.filter((lift) => lift >= leastLift));
  const seen = planned.filter((_, i) => lifts[i]! >= Math.max(leastLift, seenShare * usual));
  const known = lifts.filter((lift) => !Number.isNaN(lift)).length;
  return seen.length > 0 && seen.length >= fittingShare * known ? seen.sort((a, b) => a.from - b.from) : null;
}

function stretchesAt(minute: Minutes, minutes: Minutes, grid: Grid, calendar: Calendar): Stretch[] {
  return calendar.days.flatMap((day) => {
    const from = sampleAtMinute(grid, calendar, day, minute);
    return from === null ? [] : [{ from, to: Math.min(grid.count, from + samplesIn(grid, minutes)) }];
  });
}
