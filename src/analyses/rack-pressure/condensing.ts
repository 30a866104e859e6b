import { median } from '../../maths/median.ts';
import { quantile } from '../../maths/quantile.ts';
import type { Evidence } from '../../model/evidence.ts';
import type { Log } from '../../model/log.ts';
import type { Record } from '../../model/record.ts';
import { dewTemperature, knownRefrigerant } from '../../refrigerants/saturation.ts';
import type { GroupSignals, Signals } from '../../signals/types.ts';
import { measure } from '../evidence-parts.ts';
import { evidenceOf } from './evidence.ts';
import { highHours } from './high-period.ts';
import { hourlyMeans, hoursOfDay } from './hourly.ts';
import { settings } from './settings.ts';

const hourMs = 3_600_000;
const outdoorName = /outdoor|outside|ambient|\boat\b/i;
const fewestHours = 24;

/** Condensing well above what its own norm allows at the same outdoor temperature. */
export function condensingHigh(group: GroupSignals, { log }: Signals): Evidence[] {
  const { discharge, refrigerant } = group.group;
  if (discharge === null || refrigerant === null || knownRefrigerant(refrigerant) === null) return [];
  const condensing = hourlyMeans(discharge, log.grid).map((pressure) =>
    dewTemperature(refrigerant, pressure),
  );
  const outdoorRecord = outdoorOf(group, log);
  const outdoor = hourlyMeans(outdoorRecord, log.grid);
  const normDays = Math.min(log.calendar.days.length, Math.max(5, Math.ceil(log.calendar.days.length / 3)));
  const normHours = hoursOfDay(log.calendar.days[normDays - 1]!, log.grid).to;
  const expected = expectedCondensing(condensing, outdoor, normHours);
  const excess = condensing.map((value, hour) => value - expected(hour));
  const limit = outdoorRecord === null ? 1.5 * settings.condensingRise.value : settings.condensingRise.value;
  const period = highHours(excess, limit, log);
  if (period === null) return [];
  return [
    evidenceOf(group, {
      shape: 'condensing-high',
      onset: log.grid.startMs + period.from * hourMs,
      end: period.to === null ? null : log.grid.startMs + period.to * hourMs,
      certainty: (outdoorRecord === null ? 0.5 : 0.7) + 0.25 * period.share,
      measures: [measure('condensingRise', period.height, 'K')],
      features: {
        condensingRise: period.height,
        daysShare: period.share,
        outdoorKnown: outdoorRecord === null ? 0 : 1,
      },
      points: [discharge.point, outdoorRecord?.point],
    }),
  ];
}

function outdoorOf(group: GroupSignals, log: Log): Record | null {
  const named = Object.entries(group.group.others).find(([name]) => outdoorName.test(name))?.[1];
  const loose = log.unassigned.find(
    (record) => record.quantity === 'temperature' && outdoorName.test(record.point),
  );
  return named ?? loose ?? null;
}

/**
 * The condenser follows the outdoor air at its own usual difference, and never under its own floor: max(floor,
 * outdoor + difference). Where the norm was spent on the floor the difference of common practice stands in.
 */
function expectedCondensing(
  condensing: Float64Array,
  outdoor: Float64Array,
  normHours: number,
): (hour: number) => number {
  const norm = condensing.subarray(0, normHours);
  const floor = quantile(norm, 0.05);
  if (!outdoor.some((value) => !Number.isNaN(value))) {
    const top = quantile(norm, 0.9);
    return () => top;
  }
  const differences: number[] = [];
  norm.forEach((value, hour) => {
    if (value > floor + 1 && !Number.isNaN(outdoor[hour]!)) differences.push(value - outdoor[hour]!);
  });
  const difference =
    differences.length >= fewestHours ? median(differences) : settings.condensingDifference.value;
  return (hour) => Math.max(floor, outdoor[hour]! + difference);
}
