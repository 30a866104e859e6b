import { median } from '../../maths/median.ts';
import { actionLimit } from '../../model/air-limit.ts';
import { samplesIn } from '../../model/grid.ts';
import type { Log } from '../../model/log.ts';
import type { CircuitSignals, GroupSignals } from '../../signals/types.ts';
import { Phase } from '../../signals/types.ts';
import type { Celsius } from '../../units/quantities.ts';
import type { HighPeriod } from './high-period.ts';
import { hourlyMeans, hoursOfDay } from './hourly.ts';
import { outdoorOf } from './outdoor.ts';
import { settings } from './settings.ts';

/** From 01:00 to 05:00, as hours of the day. */
const nightHours = [1, 5] as const;
/** On so many of its nights the pressure must have come back. */
const nightsBack = 0.9;
/** Days as warm as this one, or within so much of it, K. */
const alikeWeather = 1;
/** Share of its days that the weather must explain. */
const explainedShare = 0.7;
/** Without a limit: so far above its usual level, K (4 °F). */
const plainlyWarm = 2.2;

/**
 * What tells a spell of warm weather, on a rack that is only just large enough, from machines that lost capacity, each 0 or 1:
 * whether the pressure comes back every night; whether on days as warm before it the pressure was high, or there were none
 * (left out where no outdoor temperature is logged); whether the rack had such a spell before that healed by itself; and
 * whether the air of any circuit reached its limit meanwhile.
 */
export function spellFeatures(
  group: GroupSignals,
  members: readonly CircuitSignals[],
  height: Float64Array,
  limit: number,
  period: HighPeriod,
  high: readonly number[],
  log: Log,
): { [name: string]: number } {
  const outdoor = hourlyMeans(outdoorOf(group, log), log.grid);
  const isKnown = outdoor.some((value) => !Number.isNaN(value));
  return {
    backEveryNight: !period.isCreeping && isBackEveryNight(height, high, log) ? 1 : 0,
    ...(isKnown
      ? { weatherExplains: isExplained(height, outdoor, limit, period.from, high, log) ? 1 : 0 }
      : {}),
    spellBefore: hadSpell(height, period, log) ? 1 : 0,
    limitReached: members.some((member) => reachesLimit(member, group, high)) ? 1 : 0,
  };
}

/** In the nights of the days that are high, the one before and the one after each. */
function isBackEveryNight(height: Float64Array, high: readonly number[], { calendar, grid }: Log): boolean {
  const chosen = new Set(high);
  const nights = new Set<number>();
  calendar.days.forEach((day, d) => {
    const { from, to } = hoursOfDay(day, grid);
    let count = 0;
    for (let k = from; k < to; k++) if (chosen.has(k)) count++;
    if (count >= settings.highHours.value) [d, d + 1].forEach((night) => void nights.add(night));
  });
  const levels = [...nights]
    .filter((d) => d < calendar.days.length)
    .map((d) => {
      const { from } = hoursOfDay(calendar.days[d]!, grid);
      return median(height.subarray(from + nightHours[0], from + nightHours[1]));
    })
    .filter(Number.isFinite);
  const back = levels.filter((level) => level < settings.crept.value / 2);
  return levels.length > 0 && back.length >= nightsBack * levels.length;
}

/**
 * A day is explained when days as warm before the spell stood high as well, by the middle one, or when there were none. By days,
 * for a condenser and a store follow the weather by hours.
 */
function isExplained(
  height: Float64Array,
  outdoor: Float64Array,
  limit: number,
  from: number,
  high: readonly number[],
  log: Log,
): boolean {
  const days = log.calendar.days.map((day) => {
    const hours = hoursOfDay(day, log.grid);
    return {
      ...hours,
      weather: tallOf(outdoor, hours),
      height: tallOf(height, hours),
      high: high.filter((k) => k >= hours.from && k < hours.to).length,
    };
  });
  const before = days.filter((day) => day.to <= from && !Number.isNaN(day.weather + day.height));
  const known = days.filter((day) => day.high >= settings.highHours.value && !Number.isNaN(day.weather));
  const explained = known.filter(({ weather }) => {
    const alike = before.filter((day) => day.weather >= weather - alikeWeather);
    return alike.length === 0 || median(alike.map((day) => day.height)) >= limit / 2;
  });
  return known.length > 0 && explained.length >= explainedShare * known.length;
}

/** What `highHours` of the hours reach. */
function tallOf(hours: Float64Array, { from, to }: { readonly from: number; readonly to: number }): number {
  const known = hours.subarray(from, to).filter((value) => !Number.isNaN(value));
  return known.sort().at(-settings.highHours.value) ?? Number.NaN;
}

/** Two days before it, at least two days ahead, on which hours stood plainly high, and it came back. */
function hadSpell(height: Float64Array, period: HighPeriod, { calendar, grid }: Log): boolean {
  const tall = calendar.days.filter((day) => {
    const hours = hoursOfDay(day, grid);
    return hours.to <= period.from - 48 && tallOf(height, hours) >= settings.crept.value;
  });
  return tall.length >= settings.highDays.value;
}

function reachesLimit(member: CircuitSignals, group: GroupSignals, high: readonly number[]): boolean {
  const limit =
    actionLimit(member.circuit, group.group, median(member.setPoint))?.value ??
    median(member.level) + plainlyWarm;
  const over = high.filter((k) => settledAir(member, k) >= limit);
  return over.length >= settings.highHours.value;
}

/** Mean settled air of one hour; NaN where less than a quarter of it is known. */
function settledAir({ air, phase, log }: CircuitSignals, k: number): Celsius {
  const hour = samplesIn(log.grid, 60);
  let sum = 0;
  let known = 0;
  for (let i = k * hour; i < Math.min(air.length, (k + 1) * hour); i++) {
    if (phase[i] !== Phase.cooling || Number.isNaN(air[i]!)) continue;
    sum += air[i]!;
    known++;
  }
  return 4 * known > hour ? sum / known : Number.NaN;
}
