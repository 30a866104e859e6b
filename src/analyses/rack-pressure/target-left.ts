import { mean } from '../../maths/mean.ts';
import type { Evidence } from '../../model/evidence.ts';
import { timeAt } from '../../model/grid.ts';
import type { GroupSignals, Signals } from '../../signals/types.ts';
import { measure } from '../evidence-parts.ts';
import { evidenceOf } from './evidence.ts';
import { settings } from './settings.ts';
import type { SuctionHours } from './suction-hours.ts';
import { type Visit, visitHours } from './visits.ts';

/** Mean over whole days, so that a target that floats by the hour does not seem to have moved. */
const dayHours = 24;

/**
 * A logged suction target that was moved for a visit and has not come back: the day before the visit against the day
 * after it and the last day of the log.
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
    const before = hours.targetMoved.slice(Math.max(0, around[0]! - dayHours), around[0]);
    const after = hours.targetMoved.slice(around.at(-1)! + 1).subarray(0, dayHours);
    const moved = mean(after) - mean(before);
    const still = mean(hours.targetMoved.slice(-dayHours)) - mean(before);
    if (after.length < dayHours / 2 || !isLeft(moved, still)) continue;
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

function isLeft(moved: number, still: number): boolean {
  const least = settings.targetLeft.value;
  return Math.abs(moved) >= least && Math.abs(still) >= least && moved * still > 0;
}
