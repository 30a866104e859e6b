import type { Evidence } from '../../model/evidence.ts';
import { timeAt } from '../../model/grid.ts';
import type { GroupSignals, Signals } from '../../signals/types.ts';
import { measure } from '../evidence-parts.ts';
import { evidenceOf } from './evidence.ts';
import { settings } from './settings.ts';

/** A target that moves by less than this within a day, kPa, stands still. */
const plainMove = 2;

/** A logged target that used to move on most days and has stood still for a week: its float was switched off. */
export function floatStopped(group: GroupSignals, { log }: Signals): Evidence[] {
  const target = group.group.pressureSetPoint;
  if (target === null || typeof target === 'number') return [];
  const least = Math.max(plainMove, 2 * target.resolution);
  const moved = log.calendar.days.map(({ from, to }) => rangeOf(target.values, from, to) > least);
  const lastMove = moved.lastIndexOf(true);
  const still = moved.length - 1 - lastMove;
  const before = moved.slice(0, lastMove + 1);
  const used = before.filter(Boolean).length;
  if (lastMove < 0 || used < 3 || used < 0.5 * before.length || still < settings.floatDays.value) return [];
  return [
    evidenceOf(group, {
      shape: 'float-stopped',
      onset: timeAt(log.grid, log.calendar.days[lastMove]!.to - 1),
      end: null,
      certainty: 0.6,
      measures: [measure('daysStill', still, 'd')],
      features: { daysStill: still },
      points: [target.point, group.group.pressure?.point],
    }),
  ];
}

function rangeOf(values: Float64Array, from: number, to: number): number {
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = from; i < to; i++) {
    if (values[i]! < lowest) lowest = values[i]!;
    if (values[i]! > highest) highest = values[i]!;
  }
  return highest - lowest;
}
