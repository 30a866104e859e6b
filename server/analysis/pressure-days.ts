import type { Log } from '../../src/model/log.ts';
import { siteScale } from '../../src/reporting/site-scale.ts';
import { dailyPressure } from '../../src/signals/daily-pressure.ts';
import type { GroupSignals } from '../../src/signals/types.ts';
import { rounded } from './rounded.ts';

/** Daily medians of one pressure of a rack in the site's unit, for the small picture beside a finding on it. */
export interface PressureDays {
  readonly suctionGroup: string;
  readonly of: 'suction' | 'discharge';
  readonly point: string;
  readonly median: readonly (number | null)[];
  /** What a suction is steered to; all null where that is not known. */
  readonly target: readonly (number | null)[];
}

export function pressureDays({ group, suction, suctionTarget }: GroupSignals, log: Log): PressureDays[] {
  const { pressure: toSite } = siteScale(log);
  const days = (values: Float64Array) => rounded(values, 2, toSite);
  const found: PressureDays[] = [];
  if (group.pressure !== null)
    found.push({
      suctionGroup: group.id,
      of: 'suction',
      point: group.pressure.point,
      median: days(suction),
      target: days(suctionTarget),
    });
  if (group.discharge !== null)
    found.push({
      suctionGroup: group.id,
      of: 'discharge',
      point: group.discharge.point,
      median: days(dailyPressure(group.discharge, log.calendar)),
      target: log.calendar.days.map(() => null),
    });
  return found;
}
