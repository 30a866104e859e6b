import { mean } from '../../maths/mean.ts';
import { quantiles } from '../../maths/quantile.ts';
import type { Evidence } from '../../model/evidence.ts';
import { timeAt } from '../../model/grid.ts';
import type { GroupSignals, Signals } from '../../signals/types.ts';
import type { Kelvin } from '../../units/quantities.ts';
import { measure } from '../evidence-parts.ts';
import { evidenceOf } from './evidence.ts';
import { settings } from './settings.ts';
import type { SuctionHours } from './suction-hours.ts';
import { type Visit, visitHours } from './visits.ts';

/** Mean over whole days, so that a target that floats by the hour does not seem to have moved. */
const dayHours = 24;

/** Days that show both ends of the range in which a target floats. */
const fewestFloatDays = 4;
const mostFloatDays = 10;

/**
 * A logged suction target that was moved for a visit and has not come back: the day before the visit against the day
 * after it and the last day of the log; or, for a float that wanders from day to day, both ends of its range before the visit against
 * those of all hours since.
 */
export function targetLeft(
  group: GroupSignals,
  visits: readonly Visit[],
  hours: SuctionHours,
  { log }: Signals,
): Evidence[] {
  const target = group.group.pressureSetPoint;
  if (target === null || typeof target === 'number') return [];
  for (const visit of visits) {
    const around = visitHours([visit], log);
    const before = hours.targetMoved.subarray(0, around[0]);
    const after = hours.targetMoved.subarray(around.at(-1)! + 1);
    const still = byDays(before, after) ?? byEnds(before, after);
    if (still === null) continue;
    return [
      evidenceOf(group, {
        shape: 'target-left',
        onset: timeAt(log.grid, visit.from),
        end: null,
        certainty: 0.85,
        measures: [measure('targetMoved', still, 'K')],
        features: { targetMoved: still, circuitsOffShare: visit.circuitsOff },
        points: [target.point, group.group.pressure?.point],
      }),
    ];
  }
  return [];
}

/** By how much the day after a visit, and the last one, stand off the day before it, K; null where they do not. */
function byDays(before: Float64Array, after: Float64Array): Kelvin | null {
  if (after.length < dayHours / 2) return null;
  const usual = mean(before.subarray(-dayHours));
  const moved = mean(after.subarray(0, dayHours)) - usual;
  const still = mean(after.subarray(-dayHours)) - usual;
  return isLeft(moved, still) ? still : null;
}

/** By how much the range in which it floats has moved as a whole, K; null where it has not, or too few days show its ends. */
function byEnds(before: Float64Array, after: Float64Array): Kelvin | null {
  if (Math.min(before.length, after.length) < fewestFloatDays * dayHours) return null;
  const ends = (hours: Float64Array) => quantiles(hours, [0.05, 0.95]) as [number, number];
  const [lowest, highest] = ends(before.subarray(-mostFloatDays * dayHours));
  const [lowestNow, highestNow] = ends(after);
  const [low, high] = [lowestNow - lowest, highestNow - highest];
  return isLeft(low, high) ? (low + high) / 2 : null;
}

function isLeft(one: Kelvin, other: Kelvin): boolean {
  const least = settings.targetLeft.value;
  return Math.abs(one) >= least && Math.abs(other) >= least && one * other > 0;
}
