import { median } from '../../maths/median.ts';
import type { Calendar, Grid, LocalDay } from '../../model/grid.ts';
import { offsetAt, samplesIn } from '../../model/grid.ts';
import type { DefrostPlan } from '../../model/log.ts';
import type { Minutes } from '../../units/quantities.ts';
import { minutesADay, sampleAtMinute } from '../local-minutes.ts';
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
  const { starts } = plan;
  const planned = daysByOffset(calendar).flatMap(({ days, shifts }) =>
    mostLifting(
      shifts.map((shift) =>
        starts.flatMap((minute) => stretchesAt(minute + shift, minutes, grid, calendar, days)),
      ),
      air,
      grid,
    ),
  );
  const lifts = planned.map((stretch) => liftIn(air, stretch, grid));
  const usual = median(lifts.filter((lift) => lift >= leastLift));
  const seen = planned.filter((_, i) => lifts[i]! >= Math.max(leastLift, seenShare * usual));
  const known = lifts.filter((lift) => !Number.isNaN(lift)).length;
  return seen.length > 0 && seen.length >= fittingShare * known ? seen.sort((a, b) => a.from - b.from) : null;
}

interface DaysOfOffset {
  readonly days: readonly LocalDay[];
  /** Minutes by which the starts may be off: none, or what the clocks changed while the controller's stood still. */
  readonly shifts: readonly Minutes[];
}

function daysByOffset(calendar: Calendar): DaysOfOffset[] {
  const offsets = [...new Set(calendar.offsets.map(({ offsetMinutes }) => offsetMinutes))];
  const offsetOf = ({ from, to }: LocalDay) => offsetAt(calendar, (from + to) >> 1);
  return offsets.map((offset) => ({
    days: calendar.days.filter((day) => offsetOf(day) === offset),
    shifts: [0, ...offsets.filter((other) => other !== offset).map((other) => offset - other)],
  }));
}

/** The first of those that lift the air the most often. */
function mostLifting(choices: readonly Stretch[][], air: Float64Array, grid: Grid): Stretch[] {
  const lifting = choices.map(
    (stretches) => stretches.filter((stretch) => liftIn(air, stretch, grid) >= leastLift).length,
  );
  return choices[lifting.indexOf(Math.max(...lifting))]!;
}

function stretchesAt(
  minute: Minutes,
  minutes: Minutes,
  grid: Grid,
  calendar: Calendar,
  days: readonly LocalDay[],
): Stretch[] {
  const inDay = (minute + minutesADay) % minutesADay;
  return days.flatMap((day) => {
    const from = sampleAtMinute(grid, calendar, day, inDay);
    return from === null ? [] : [{ from, to: Math.min(grid.count, from + samplesIn(grid, minutes)) }];
  });
}
