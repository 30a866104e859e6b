import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { measure } from '../evidence-parts.ts';
import { evidenceOf, heldAt } from './evidence.ts';
import type { CircuitHours } from './hours.ts';
import { freshHours, openStretches, pausedBefore } from './override.ts';
import { settings } from './settings.ts';

const fewestMissed = 2;

/**
 * A valve that feeds without a pause from one hour to the end of the log, and a circuit that has had none of the defrosts
 * that were due since: held in cooling. Its air is not warm when that begins, so nothing asked the valve for it; later
 * the coil frosts shut and the air may climb, and its probes part as the frost does.
 */
export function heldInCooling(signals: CircuitSignals, hours: CircuitHours): Evidence[] {
  const stretch = openStretches(hours.opening).at(-1);
  if (stretch === undefined || stretch.to < hours.opening.length - 1) return [];
  const { from, to } = stretch;
  if (to - from < settings.coldHours.value || !pausedBefore(hours, from)) return [];
  const start = from * hours.samples;
  const missed = signals.slots.flatMap(({ missed: samples }) => samples.filter((sample) => sample >= start));
  if (missed.length < fewestMissed || signals.defrosts.some((window) => window.from >= start)) return [];
  if (!hours.probes.every((probe) => riseOf(probe, from, from + freshHours) <= settings.usualWithin.value))
    return [];
  const climbed = median(hours.probes.map((probe) => riseOf(probe, Math.max(from, to - 24), to)));
  return [
    evidenceOf(signals, {
      shape: 'override-on',
      from: start,
      to: null,
      certainty: 0.6 + Math.min(0.3, (to - from) / 100),
      measures: [
        measure('hoursForced', to - from, 'h'),
        measure('defrostsMissed', missed.length, '1'),
        measure('airClimbed', climbed, 'K'),
        ...heldAt(signals, start, signals.log.grid.count),
      ],
      features: {
        hours: to - from,
        still: 1,
        defrostsSeen: 0,
        inCooling: 1,
        ...(climbed > settings.usualWithin.value ? { climbed } : {}),
      },
    }),
  ];
}

function riseOf(probe: Float64Array, from: number, to: number): number {
  return median(probe.subarray(from, to)) - median(probe.subarray(0, from));
}
