import { median } from '../../maths/median.ts';
import { quantile } from '../../maths/quantile.ts';
import type { Evidence } from '../../model/evidence.ts';
import type { GroupSignals, Signals } from '../../signals/types.ts';
import { measure } from '../evidence-parts.ts';
import { evidenceOf } from './evidence.ts';
import { hourlyMeans, hoursOfDay } from './hourly.ts';
import { settings } from './settings.ts';

const hourMs = 3_600_000;
const hoursJudged = 72;

/**
 * The receiver under what is usual for this rack: three days under two fifths of its own median and under nine tenths
 * of its own earlier readings; dated to when it left those. A channel that never moves is not connected and says nothing.
 */
export function lowLevel(group: GroupSignals, { log }: Signals): Evidence[] {
  const record = group.group.liquidLevel;
  if (record === null) return [];
  const hours = hourlyMeans(record, log.grid);
  const days = Math.min(log.calendar.days.length, Math.max(5, Math.ceil(log.calendar.days.length / 3)));
  const norm = hours.subarray(0, hoursOfDay(log.calendar.days[days - 1]!, log.grid).to);
  const usual = median(norm);
  const lowest = quantile(norm, 0.1);
  if (!(quantile(norm, 0.9) - lowest > 0.02 * usual)) return [];
  const limit = Math.min(lowest, settings.levelShare.value * usual);
  const now = median(hours.subarray(-hoursJudged));
  if (!(now < limit)) return [];
  let from = hours.length - 1;
  while (from > 0 && !(median(hours.subarray(Math.max(0, from - 24), from)) > lowest)) from--;
  return [
    evidenceOf(group, {
      shape: 'level-low',
      onset: log.grid.startMs + from * hourMs,
      end: null,
      certainty: 0.6,
      measures: [measure('level', 100 * now, '%'), measure('usualLevel', 100 * usual, '%')],
      features: { levelRatio: now / usual },
      points: [record.point],
    }),
  ];
}
