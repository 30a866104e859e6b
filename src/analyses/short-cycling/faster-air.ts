import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import { stepMinutes, timeAt } from '../../model/grid.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { knownFeatures, measure } from '../evidence-parts.ts';
import { airSwing, leastSwing } from './air-swing.ts';
import { inferredRuns } from './inferred.ts';
import { meta } from './meta.ts';
import { narrowedSwing } from './narrowed.ts';
import { historyOf } from './run-history.ts';
import { settings } from './settings.ts';
import { startRate } from './start-rate.ts';

/** Of what only the air shows, at most this is certain. */
const certainty = 0.6;
/** Coarsest logging at which the cycles of the air can be counted, min. */
export const coarsest = 2;
/** Times its earlier rate from which the air cycles faster. */
export const faster = 1.3;
/** The air is held where it was, K: one that is not may swing less because its valve no longer closes. */
const levelWithin = 0.5;

/**
 * Where no valve is logged: the air's swing has narrowed on all probes, and it goes up and down more often than it did, at the
 * level at which it was held before. A coil that is short of cooling swings less, too, but it cycles less, not more.
 */
export function fasterAir(signals: CircuitSignals): Evidence[] {
  const { circuit, air, level, log } = signals;
  if (stepMinutes(log.grid) > coarsest) return [];
  const narrowed = narrowedSwing(airSwing(signals), leastSwing(signals));
  if (narrowed === null) return [];
  const { day, before, after } = narrowed;
  const moved = median(level.subarray(day)) - median(level.subarray(0, day));
  if (Math.abs(moved) > levelWithin) return [];
  const resolution = Math.max(...circuit.probes.map((probe) => probe.record.resolution));
  const { starts } = historyOf(inferredRuns(air, resolution / 2, log.grid));
  const { days } = startRate(starts, air, log.grid, log.calendar);
  const usual = median(days.subarray(0, day));
  const now = median(days.subarray(day));
  if (!(now >= faster * usual) || now < settings.ownNormStarts.value) return [];
  return [
    {
      analysis: meta.id,
      kind: 'short-cycling',
      circuit: circuit.id,
      suctionGroup: circuit.suctionGroup,
      probe: null,
      points: circuit.probes.map((probe) => probe.point),
      onset: timeAt(log.grid, log.calendar.days[day]!.from),
      end: null,
      certainty,
      measures: [
        measure('airSwing', after, 'K'),
        measure('usualAirSwing', before, 'K'),
        measure('airCyclesPerHour', now, '/h'),
        measure('usualAirCyclesPerHour', usual, '/h'),
      ],
      features: knownFeatures({
        airSwing: after,
        airSwingRatio: after / before,
        normRatio: now / usual,
        byAir: 1,
      }),
      shape: 'valve-inferred',
    },
  ];
}
