import { median } from '../../maths/median.ts';
import type { Measure } from '../../model/evidence.ts';
import type { Log } from '../../model/log.ts';
import type { GroupSignals } from '../../signals/types.ts';
import { measure } from '../evidence-parts.ts';
import { hourlyMeans } from './hourly.ts';

/**
 * What a gauge would have shown: the suction over the `hours` that were judged, and what it is held against, its target then or,
 * where that says nothing of it, its own level at those hours of the day before hour `since`. kPa absolute, medians of hours.
 */
export function suctionLevels(
  { group }: GroupSignals,
  hours: readonly number[],
  since: number,
  overTarget: boolean,
  { grid }: Log,
): Measure[] {
  const suction = hourlyMeans(group.pressure, grid);
  const at = (values: Float64Array): number => median(hours.map((hour) => values[hour]!));
  const ofDay = new Set(hours.map((hour) => hour % 24));
  const before = suction.subarray(0, since).filter((_, hour) => ofDay.has(hour % 24));
  return [
    measure('suctionLevel', at(suction), 'kPa'),
    overTarget
      ? measure('suctionTarget', at(hourlyMeans(group.pressureSetPoint, grid)), 'kPa')
      : measure('suctionUsual', median(before), 'kPa'),
  ];
}
