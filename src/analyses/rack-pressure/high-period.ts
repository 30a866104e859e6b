import { cusum } from '../../maths/cusum.ts';
import { median } from '../../maths/median.ts';
import { medianAbsoluteDeviation, normalConsistency } from '../../maths/median-absolute-deviation.ts';
import type { Log } from '../../model/log.ts';
import type { Kelvin } from '../../units/quantities.ts';
import { hoursOfDay } from './hourly.ts';
import { settings } from './settings.ts';

export interface HighPeriod {
  /** Hours of the log; `to` null when it lasts to the end. */
  readonly from: number;
  readonly to: number | null;
  /** Median height of its hours that are high, or of its days for a creeping rise, K saturated. */
  readonly height: Kelvin;
  readonly isCreeping: boolean;
  /** Share of its days that count. */
  readonly share: number;
  /** Share of the hours of its last three days that are high. */
  readonly hoursShare: number;
}

/** Scatter of daily medians below which none is believed, K. */
const leastScatter = 0.35;

/** A stretch in which the suction stood above `limit`: hours of it on several days, or days that crept up. */
export function highPeriod(height: Float64Array, limit: Kelvin, log: Log): HighPeriod | null {
  return highHours(height, limit, log) ?? creptDays(height, settings.crept.value, log);
}

/** The stretch from the first of two days within seven that have three hours above `limit`. */
export function highHours(height: Float64Array, limit: number, log: Log): HighPeriod | null {
  const busy: number[] = [];
  log.calendar.days.forEach((day, d) => {
    const { from, to } = hoursOfDay(day, log.grid);
    const high = height.subarray(from, to).filter((value) => value > limit);
    if (high.length >= settings.highHours.value) busy.push(d);
  });
  const first = busy.findIndex(
    (day, i) => (busy[i + settings.highDays.value - 1] ?? Number.POSITIVE_INFINITY) - day < 7,
  );
  if (first < 0) return null;
  const firstDay = busy[first]!;
  const lastDay = busy.at(-1)!;
  const start = hoursOfDay(log.calendar.days[firstDay]!, log.grid).from;
  const from = height.findIndex((value, hour) => hour >= start && value > limit);
  const until = hoursOfDay(log.calendar.days[lastDay]!, log.grid).to;
  const high = height.subarray(from, until).filter((value) => value > limit);
  return {
    from,
    to: log.calendar.days.length - 1 - lastDay <= 1 ? null : until,
    height: median(high),
    isCreeping: false,
    share: busy.filter((day) => day >= firstDay).length / (lastDay - firstDay + 1),
    hoursShare: shareAbove(height.subarray(Math.max(from, until - 72), until), limit),
  };
}

function shareAbove(hours: Float64Array, limit: number): number {
  const known = hours.filter((value) => !Number.isNaN(value));
  return known.filter((value) => value > limit).length / Math.max(1, known.length);
}

/** Daily medians that crept up by `least` over the norm of the first third, and are still up. */
export function creptDays(height: Float64Array, least: Kelvin, log: Log): HighPeriod | null {
  const days = Float64Array.from(log.calendar.days, (day) => {
    const { from, to } = hoursOfDay(day, log.grid);
    return median(height.subarray(from, to));
  });
  const third = days.subarray(0, Math.max(5, Math.ceil(days.length / 3)));
  const scatter = Math.max(leastScatter, normalConsistency * medianAbsoluteDeviation(third));
  const usual = median(third);
  const { alarms, up } = cusum(
    days.map((value) => (value - usual) / scatter),
    settings.cusumAllowance.value,
    settings.cusumLimit.value,
  );
  const alarm = alarms.filter((one) => one.direction === 'up').at(-1);
  if (alarm === undefined || up.at(-1)! === 0) return null;
  const now = median(days.subarray(-3)) - usual;
  if (!(now >= least)) return null;
  const since = days.subarray(alarm.onset).filter((value) => !Number.isNaN(value));
  return {
    from: hoursOfDay(log.calendar.days[alarm.onset]!, log.grid).from,
    to: null,
    height: now,
    isCreeping: true,
    share: since.filter((value) => value - usual > least / 2).length / since.length,
    hoursShare: 1,
  };
}
