import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import { stepMinutes } from '../../model/grid.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { measure } from '../evidence-parts.ts';
import { type DefrostEvent, defrostEvents } from './events.ts';
import { evidenceOf } from './evidence.ts';
import { settings } from './settings.ts';

/** Lengths this near to the longest are the longest; a status read in steps cannot be told finer. */
const resolutionMinutes = 2;

/**
 * Defrosts that used to end at changing times, as those ended by the coil do, and of late all ran to one and the same
 * longest time: by chance, with the earlier share of such ones, hardly ever.
 */
export function endedByTheClock(signals: CircuitSignals): Evidence[] {
  if (signals.defrostSource !== 'status' || signals.circuit.defrost.kind === 'off-cycle') return [];
  const events = defrostEvents(signals);
  const longest = Math.max(...events.map((event) => event.minutes));
  const isLongest = (event: DefrostEvent) => longest - event.minutes < resolutionMinutes;
  let first = events.length;
  while (first > 0 && isLongest(events[first - 1]!)) first--;
  const run = events.length - first;
  if (first < settings.clockDefrosts.value || run < settings.clockDefrosts.value) return [];
  const earlier = events.slice(0, first);
  const shareBefore = earlier.filter(isLongest).length / first;
  if (shareBefore > settings.clockBefore.value || shareBefore ** run > settings.clockChance.value) return [];
  const step = Math.max(1, stepMinutes(signals.log.grid));
  const usual = median(earlier.map((event) => event.minutes));
  if (longest - usual < settings.clockSteps.value * step) return [];
  return [
    evidenceOf(signals, {
      shape: 'by-the-clock',
      probe: null,
      from: events[first]!.at,
      certainty: 0.75,
      measures: [
        measure('defrostLength', longest, 'min'),
        measure('usualDefrostLength', usual, 'min'),
        measure('endedByTheClockBefore', 100 * shareBefore, '%'),
      ],
      features: { endedByTheClock: 1, lengthRatio: 1, run },
    }),
  ];
}
