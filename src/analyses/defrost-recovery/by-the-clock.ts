import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import { stepMinutes } from '../../model/grid.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { measure } from '../evidence-parts.ts';
import { type DefrostEvent, lengthsAreKnown } from './events.ts';
import { evidenceOf } from './evidence.ts';
import { heatFeatures } from './heat-features.ts';
import { settings } from './settings.ts';

/** Lengths within a logging step of the longest, and within a minute, are the longest. */
const resolutionMinutes = 1;

/**
 * Defrosts that used to end at changing times, as those ended by the coil do, and of late all ran to one and the same
 * longest time: if their order were chance, hardly ever would the last ones all be longest.
 */
export function endedByTheClock(signals: CircuitSignals, events: readonly DefrostEvent[]): Evidence[] {
  if (!lengthsAreKnown(signals) || signals.circuit.defrost.kind === 'off-cycle') return [];
  const step = stepMinutes(signals.log.grid);
  const longest = Math.max(...events.map((event) => event.minutes));
  const isLongest = (event: DefrostEvent) => longest - event.minutes <= Math.max(resolutionMinutes, step);
  let first = events.length;
  while (first > 0 && isLongest(events[first - 1]!)) first--;
  const run = events.length - first;
  if (first < settings.clockDefrosts.value || run < settings.clockDefrosts.value) return [];
  const earlier = events.slice(0, first);
  const longestBefore = earlier.filter(isLongest).length;
  const shareBefore = longestBefore / first;
  const chance = chanceOfRun(run, run + longestBefore, events.length);
  if (shareBefore > settings.clockBefore.value || chance > settings.clockChance.value) return [];
  const usual = median(earlier.map((event) => event.minutes));
  if (longest - usual < settings.clockSteps.value * Math.max(1, step)) return [];
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
      features: { endedByTheClock: 1, lengthRatio: 1, run, ...heatFeatures(events, first) },
    }),
  ];
}

/** Chance that the last `run` of `all` events are longest when `longest` of them are, in any order (hypergeometric). */
function chanceOfRun(run: number, longest: number, all: number): number {
  let chance = 1;
  for (let i = 0; i < run; i++) chance *= (longest - i) / (all - i);
  return chance;
}
