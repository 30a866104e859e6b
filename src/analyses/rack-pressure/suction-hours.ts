import { median } from '../../maths/median.ts';
import { medianAbsoluteDeviation, normalConsistency } from '../../maths/median-absolute-deviation.ts';
import type { Log } from '../../model/log.ts';
import { dewTemperature, knownRefrigerant } from '../../refrigerants/saturation.ts';
import type { GroupSignals } from '../../signals/types.ts';
import type { Kelvin } from '../../units/quantities.ts';
import { hourlyMeans, hoursOfDay } from './hourly.ts';
import { settings } from './settings.ts';

/**
 * Hourly suction of a group as distances in saturated temperature, K: what its circuits feel. A psi is twice as
 * many kelvins at 13 psig as at 50, so no difference of pressures would do for both.
 */
export interface SuctionHours {
  /** Above the target; above the own usual level where there is no target. */
  readonly aboveTarget: Float64Array;
  /** `aboveTarget` less its own norm at this hour of the day, from the first third of the days. */
  readonly aboveNorm: Float64Array;
  /** The target less its own norm. */
  readonly targetMoved: Float64Array;
  readonly hasTarget: boolean;
  /** Robust scale of `aboveNorm` in the hours of the norm. */
  readonly scatter: Kelvin;
}

const fewestNormDays = 5;

export function suctionHours(group: GroupSignals, log: Log, visits: readonly number[]): SuctionHours | null {
  if (group.group.pressure === null) return null;
  const saturated = saturatedBy(group);
  const suction = hourlyMeans(group.group.pressure, log.grid).map(saturated);
  for (const hour of visits) suction[hour] = Number.NaN;
  const targets = hourlyMeans(group.group.pressureSetPoint, log.grid).map(saturated);
  const hasTarget = targets.some((value) => !Number.isNaN(value));
  const normHours = normLength(log);
  const usual = median(suction.subarray(0, normHours));
  const usualTarget = median(targets.subarray(0, normHours));
  const aboveTarget = suction.map((value, hour) => value - (hasTarget ? targets[hour]! : usual));
  const aboveNorm = lessNorm(aboveTarget, normHours);
  return {
    aboveTarget,
    aboveNorm,
    targetMoved: targets.map((value) => value - usualTarget),
    hasTarget,
    scatter: normalConsistency * medianAbsoluteDeviation(aboveNorm.subarray(0, normHours)),
  };
}

/**
 * From a pressure (kPa absolute) to its dew point. Where the refrigerant is not known, to a temperature above an
 * unstated zero: logarithms of pressures are nearly proportional to it for every refrigerant, so differences hold.
 */
function saturatedBy({ group: { refrigerant } }: GroupSignals): (pressure: number) => number {
  return refrigerant !== null && knownRefrigerant(refrigerant) !== null
    ? (pressure) => dewTemperature(refrigerant, pressure)
    : (pressure) => Math.log(pressure) / settings.pressurePerKelvin.value;
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
