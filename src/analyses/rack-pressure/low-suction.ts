import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import type { GroupSignals, Signals } from '../../signals/types.ts';
import { evidenceOf } from './evidence.ts';
import { riseMeasure } from './high-suction.ts';
import { settings } from './settings.ts';
import type { SuctionHours } from './suction-hours.ts';
import { suctionLevels } from './suction-levels.ts';

const hourMs = 3_600_000;
const hoursJudged = 72;

/** The last three days under target and norm both: the target is not held, or nothing is left to feed. */
export function lowSuction(group: GroupSignals, hours: SuctionHours, site: Signals): Evidence[] {
  const limit = -settings.low.value;
  const under = (k: number) => hours.aboveNorm[k]! < limit && hours.aboveTarget[k]! < limit;
  const first = Math.max(0, hours.aboveNorm.length - hoursJudged);
  const last = Array.from({ length: hours.aboveNorm.length - first }, (_, k) => first + k);
  const low = last.filter(under);
  if (low.length < 0.7 * last.length) return [];
  let onset = low[0]!;
  for (let k = first; k > 0; k--)
    if (under(k)) onset = k;
    else if (!Number.isNaN(hours.aboveNorm[k]!) && !under(k - 1)) break;
  const depth = median(low.map((k) => hours.aboveNorm[k]!));
  return [
    evidenceOf(group, {
      shape: 'low',
      onset: site.log.grid.startMs + onset * hourMs,
      end: null,
      certainty: 0.5 + 0.3 * (low.length / last.length),
      measures: [riseMeasure(group, depth), ...suctionLevels(group, low, onset, hours.hasTarget, site.log)],
      features: {
        height: depth,
        aboveTarget: median(low.map((k) => hours.aboveTarget[k]!)),
        overTarget: hours.hasTarget ? 1 : 0,
      },
      points: [group.group.pressure?.point],
    }),
  ];
}
