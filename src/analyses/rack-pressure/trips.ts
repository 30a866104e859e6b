import { median } from '../../maths/median.ts';
import { poissonInterval } from '../../maths/poisson-interval.ts';
import type { Evidence } from '../../model/evidence.ts';
import { dayAt, samplesIn, stepMinutes, timeAt } from '../../model/grid.ts';
import type { Log } from '../../model/log.ts';
import { targetAt } from '../../model/record.ts';
import type { GroupSignals, Signals } from '../../signals/types.ts';
import type { Kilopascal } from '../../units/quantities.ts';
import { measure } from '../evidence-parts.ts';
import { commonStops } from './common-stops.ts';
import { evidenceOf } from './evidence.ts';
import { settings } from './settings.ts';
import type { Visit } from './visits.ts';

const longestDip = 30;
/** Dips that the export begins with are the habit of the rack: worth knowing, and no change. */
const fewestNormDays = 3;

/**
 * Short dips of the suction far under its target, or moments at which all machines stop at once under it, on two days of
 * seven thrice as many as at first, and more since than before.
 */
export function lowPressureTrips(group: GroupSignals, visits: readonly Visit[], site: Signals): Evidence[] {
  const { grid, calendar } = site.log;
  const dips = tripsOf(group, visits, site);
  const perDay = new Float64Array(calendar.days.length);
  for (const dip of dips) perDay[dayAt(calendar, dip)]!++;
  const normDays = Math.max(fewestNormDays, Math.ceil(perDay.length / 3));
  const usual = median(perDay.subarray(0, normDays));
  const many = [...perDay.keys()].filter(
    (day) => perDay[day]! >= settings.tripsADay.value && perDay[day]! >= 3 * usual,
  );
  const first = many.findIndex((day, i) => (many[i + 1] ?? Number.POSITIVE_INFINITY) - day < 7);
  if (first < 0) return [];
  const firstDay = many[first]!;
  const onset = dips.find((dip) => dayAt(calendar, dip) >= firstDay)!;
  const lastDay = many.at(-1)!;
  if (firstDay >= fewestNormDays && !isMoreSince(perDay.subarray(0, lastDay + 1), firstDay)) return [];
  const now = median(many.map((day) => perDay[day]!));
  return [
    evidenceOf(group, {
      shape: 'low-pressure-trips',
      onset: timeAt(grid, onset),
      end: calendar.days.length - 1 - lastDay <= 1 ? null : timeAt(grid, calendar.days[lastDay]!.to),
      certainty: 0.6 + Math.min(0.3, 0.05 * many.length),
      measures: [measure('tripsADay', now, '/d'), measure('usualTripsADay', usual, '/d')],
      features: {
        tripsADay: now,
        usualTripsADay: usual,
        days: many.length,
        note: firstDay < fewestNormDays ? 1 : 0,
      },
      points: [group.group.pressure?.point, ...group.group.compressors.map((record) => record.point)],
    }),
  ];
}

/**
 * Whether the days from `first` on, quiet ones included, have more dips than those before: a rack whose swing ends just
 * above the depth that counts dips now and then, and its worst days prove nothing. 95 % intervals of the two means apart.
 */
function isMoreSince(perDay: Float64Array, first: number): boolean {
  const intervalOf = (days: Float64Array) => {
    const { low, high } = poissonInterval(days.reduce((sum, count) => sum + count, 0));
    return { low: low / days.length, high: high / days.length };
  };
  return intervalOf(perDay.subarray(first)).low > intervalOf(perDay.subarray(0, first)).high;
}

/** Where each trip begins, outside visits, in order; a stop at the bottom of a dip is that dip. */
function tripsOf(group: GroupSignals, visits: readonly Visit[], { log }: Signals): number[] {
  const usual = median(group.suction);
  const reach = samplesIn(log.grid, 180);
  const dips = dipsOf(group, usual, log);
  const longest = samplesIn(log.grid, longestDip);
  const stops = commonStops(group.group, usual, log).filter(
    (stop) => !dips.some((dip) => stop >= dip && stop <= dip + longest),
  );
  return [...dips, ...stops]
    .sort((a, b) => a - b)
    .filter((at) => !visits.some((visit) => at > visit.from - reach && at < visit.to + reach));
}

function dipsOf(group: GroupSignals, usual: Kilopascal, log: Log): number[] {
  const pressure = group.group.pressure!.values;
  const longest = longestDip / stepMinutes(log.grid);
  const dips: number[] = [];
  let from = -1;
  for (let i = 0; i < pressure.length; i++) {
    const target = targetAt(group.group.pressureSetPoint, i);
    const limit = settings.tripDepth.value * (Number.isNaN(target) ? usual : target);
    if (pressure[i]! < limit) {
      if (from < 0) from = i;
    } else if (from >= 0) {
      if (i - from <= longest) dips.push(from);
      from = -1;
    }
  }
  return dips;
}
