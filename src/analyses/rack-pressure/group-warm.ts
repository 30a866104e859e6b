import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import { timeAt } from '../../model/grid.ts';
import type { GroupSignals, Signals } from '../../signals/types.ts';
import { measure } from '../evidence-parts.ts';
import { evidenceOf } from './evidence.ts';
import { settings } from './settings.ts';

const fewestCircuits = 3;
const daysJudged = 3;

/**
 * Without a pressure column: most circuits of the group warm together for the last three days. The rack is the
 * likeliest common cause, humid or hot weather the other one.
 */
export function groupWarm(group: GroupSignals, { log }: Signals): Evidence[] {
  const departures = [...group.departures.values()];
  if (departures.length < fewestCircuits) return [];
  const shares = log.calendar.days.map((_, day) => {
    const known = departures.map((days) => days[day]!).filter((value) => !Number.isNaN(value));
    return known.filter((value) => value >= settings.warmRise.value).length / known.length;
  });
  const isWarm = shares.map((share) => share >= settings.warmShare.value);
  if (isWarm.slice(-daysJudged).filter(Boolean).length < daysJudged) return [];
  const first = isWarm.lastIndexOf(false) + 1;
  const rise = median(departures.map((days) => median(days.subarray(-daysJudged))));
  return [
    evidenceOf(group, {
      shape: 'group-warm',
      onset: timeAt(log.grid, log.calendar.days[first]!.from),
      end: null,
      certainty: 0.55,
      measures: [
        measure('circuitsWarm', 100 * median(shares.slice(-daysJudged)), '%'),
        measure('circuitRise', rise, 'K'),
      ],
      features: { shareWarm: median(shares.slice(-daysJudged)), circuitRise: rise },
      points: [],
    }),
  ];
}
