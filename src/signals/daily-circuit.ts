import type { Calendar, Grid, LocalDay } from '../model/grid.ts';
import { stepMinutes } from '../model/grid.ts';
import type { Record, Target } from '../model/record.ts';
import { BinnedValues } from './binned-values.ts';
import { Phase } from './types.ts';

const leastMinutes = 180;
const bin = 0.02;

export interface CircuitDays {
  readonly level: Float64Array;
  readonly setPoint: Float64Array;
  readonly duty: Float64Array;
}

/** Daily median distance of the mean air from its set point, daily set point, and daily share of feeding. */
export function circuitDays(
  mean: Float64Array,
  setPoint: Target | null,
  valve: Record | null,
  phase: Uint8Array,
  grid: Grid,
  calendar: Calendar,
): CircuitDays {
  const away = new Float64Array(Math.max(0, ...calendar.days.map(({ from, to }) => to - from)));
  const level = dailyMedians(
    calendar,
    (bins, day) => bins.addKnown(away, 0, distances(mean, setPoint, phase, day, away)),
    ({ total }) => total * stepMinutes(grid) >= leastMinutes,
  );
  const days = {
    level,
    setPoint: dailySetPoints(setPoint, calendar),
    duty: new Float64Array(level.length).fill(Number.NaN),
  };
  if (valve === null) return days;
  calendar.days.forEach((day, d) => {
    days.duty[d] = feedingShare(valve.values, phase, day, leastMinutes / stepMinutes(grid));
  });
  return days;
}

/** Writes the distances at the cooling samples of a day to the front of `away`, and says how many there are. */
function distances(
  mean: Float64Array,
  setPoint: Target | null,
  phase: Uint8Array,
  { from, to }: LocalDay,
  away: Float64Array,
): number {
  const targets = setPoint === null || typeof setPoint === 'number' ? null : setPoint.values;
  const fixed = typeof setPoint === 'number' ? setPoint : 0;
  let count = 0;
  for (let i = from; i < to; i++) {
    if (phase[i] !== Phase.cooling) continue;
    away[count++] = mean[i]! - (targets === null ? fixed : targets[i]!);
  }
  return count;
}

function dailySetPoints(setPoint: Target | null, calendar: Calendar): Float64Array {
  if (setPoint !== null && typeof setPoint !== 'number') {
    return dailyMedians(
      calendar,
      (bins, { from, to }) => bins.addKnown(setPoint.values, from, to),
      ({ total }) => total > 0,
    );
  }
  return new Float64Array(calendar.days.length).fill(setPoint ?? Number.NaN);
}

function dailyMedians(
  calendar: Calendar,
  addDay: (bins: BinnedValues, day: LocalDay) => void,
  isEnough: (bins: BinnedValues) => boolean,
): Float64Array {
  const bins = new BinnedValues(bin, -90, 90);
  return Float64Array.from(calendar.days, (day) => {
    bins.clear();
    addDay(bins, day);
    return isEnough(bins) ? bins.quantile(0.5) : Number.NaN;
  });
}

/** Mean opening while cooling; NaN where fewer than `least` samples are known. */
function feedingShare(valve: Float64Array, phase: Uint8Array, { from, to }: LocalDay, least: number): number {
  let fed = 0;
  let known = 0;
  for (let i = from; i < to; i++) {
    const opening = valve[i]!;
    if (phase[i] !== Phase.cooling || Number.isNaN(opening)) continue;
    fed += opening;
    known++;
  }
  return known >= least ? fed / known : Number.NaN;
}
