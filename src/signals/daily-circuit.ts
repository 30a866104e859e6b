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

/**
 * Daily median distance of the mean air from its set point, daily set point, and daily share of feeding.
 *
 * @param away room for one entry a sample, overwritten
 */
export function circuitDays(
  mean: Float64Array,
  setPoint: Target | null,
  valve: Record | null,
  phase: Uint8Array,
  grid: Grid,
  calendar: Calendar,
  away: Float64Array,
): CircuitDays {
  distances(mean, setPoint, phase, away);
  const level = dailyMedians(away, calendar, ({ total }) => total * stepMinutes(grid) >= leastMinutes);
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

function distances(mean: Float64Array, setPoint: Target | null, phase: Uint8Array, away: Float64Array): void {
  for (let i = 0; i < away.length; i++) away[i] = phase[i] === Phase.cooling ? mean[i]! : Number.NaN;
  if (typeof setPoint === 'number') for (let i = 0; i < away.length; i++) away[i]! -= setPoint;
  else if (setPoint !== null) for (let i = 0; i < away.length; i++) away[i]! -= setPoint.values[i]!;
}

function dailySetPoints(setPoint: Target | null, calendar: Calendar): Float64Array {
  if (setPoint !== null && typeof setPoint !== 'number') {
    return dailyMedians(setPoint.values, calendar, ({ total }) => total > 0);
  }
  return new Float64Array(calendar.days.length).fill(setPoint ?? Number.NaN);
}

function dailyMedians(
  values: Float64Array,
  calendar: Calendar,
  isEnough: (bins: BinnedValues) => boolean,
): Float64Array {
  const bins = new BinnedValues(bin, -90, 90);
  return Float64Array.from(calendar.days, ({ from, to }) => {
    bins.clear();
    bins.addKnown(values, from, to);
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
