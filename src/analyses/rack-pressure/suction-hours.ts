import { median } from '../../maths/median.ts';
import type { Log } from '../../model/log.ts';
import type { GroupSignals } from '../../signals/types.ts';
import { hourlyMeans, hoursOfDay } from './hourly.ts';

/**
 * Hourly suction pressure of a group as relative distances: logarithms of ratios, which for any refrigerant are
 * proportional to the saturated temperature, so that none need be known.
 */
export interface SuctionHours {
  /** Above the target; above the own usual level where there is no target. */
  readonly aboveTarget: Float64Array;
  /** `aboveTarget` less its own norm at this hour of the day, from the first third of the days. */
  readonly aboveNorm: Float64Array;
  /** The target less its own norm. */
  readonly targetMoved: Float64Array;
  readonly hasTarget: boolean;
  /** Hours that the norm rests on. */
  readonly normHours: number;
}

const fewestNormDays = 5;

export function suctionHours(group: GroupSignals, log: Log, visits: readonly number[]): SuctionHours | null {
  if (group.group.pressure === null) return null;
  const pressure = hourlyMeans(group.group.pressure, log.grid);
  for (const hour of visits) pressure[hour] = Number.NaN;
  const targets = hourlyMeans(group.group.pressureSetPoint, log.grid);
  const hasTarget = targets.some((value) => !Number.isNaN(value));
  const normHours = normLength(log);
  const usual = median(pressure.subarray(0, normHours));
  const usualTarget = median(targets.subarray(0, normHours));
  const aboveTarget = pressure.map((value, hour) => Math.log(value / (hasTarget ? targets[hour]! : usual)));
  return {
    aboveTarget,
    aboveNorm: lessNorm(aboveTarget, normHours),
    targetMoved: targets.map((value) => Math.log(value / usualTarget)),
    hasTarget,
    normHours,
  };
}

/** The first third of the log, of at least five days where it has them. */
function normLength({ calendar, grid }: Log): number {
  const days = Math.min(calendar.days.length, Math.max(fewestNormDays, Math.ceil(calendar.days.length / 3)));
  return hoursOfDay(calendar.days[days - 1]!, grid).to;
}

function lessNorm(values: Float64Array, normHours: number): Float64Array {
  const overall = median(values.subarray(0, normHours));
  const ofHour = Array.from({ length: 24 }, (_, hour) => {
    const same = values.subarray(0, normHours).filter((_, k) => k % 24 === hour);
    return same.length >= fewestNormDays ? median(same) : overall;
  });
  return values.map((value, k) => value - (Number.isNaN(ofHour[k % 24]!) ? overall : ofHour[k % 24]!));
}
