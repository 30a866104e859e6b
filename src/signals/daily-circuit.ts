import type { Calendar, Grid } from '../model/grid.ts';
import { stepMinutes } from '../model/grid.ts';
import type { Record, Target } from '../model/record.ts';
import { targetAt } from '../model/record.ts';
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
  const count = calendar.days.length;
  const level = new Float64Array(count).fill(Number.NaN);
  const daySetPoint = new Float64Array(count).fill(Number.NaN);
  const duty = new Float64Array(count).fill(Number.NaN);
  const levels = new BinnedValues(bin, -90, 90);
  const targets = new BinnedValues(bin, -90, 90);
  calendar.days.forEach((day, d) => {
    levels.clear();
    targets.clear();
    let fed = 0;
    let valveKnown = 0;
    for (let i = day.from; i < day.to; i++) {
      const target = targetAt(setPoint, i);
      if (!Number.isNaN(target)) targets.add(target);
      if (phase[i] !== Phase.cooling) continue;
      const away = setPoint === null ? mean[i]! : mean[i]! - target;
      if (!Number.isNaN(away)) levels.add(away);
      const opening = valve?.values[i] ?? Number.NaN;
      if (Number.isNaN(opening)) continue;
      fed += opening;
      valveKnown++;
    }
    if (levels.total * stepMinutes(grid) >= leastMinutes) level[d] = levels.quantile(0.5);
    if (targets.total > 0) daySetPoint[d] = typeof setPoint === 'number' ? setPoint : targets.quantile(0.5);
    if (valveKnown * stepMinutes(grid) >= leastMinutes) duty[d] = fed / valveKnown;
  });
  return { level, setPoint: daySetPoint, duty };
}
