import type { Evidence } from '../../model/evidence.ts';
import { stepMinutes } from '../../model/grid.ts';
import { runThreshold } from '../../signals/run-threshold.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { measure } from '../evidence-parts.ts';
import { levelChange } from './change.ts';
import { completeDefrosts } from './events.ts';
import { evidenceOf } from './evidence.ts';

/** A drip time of at least this long that is gone later was switched off. */
const plainDripMinutes = 2;

/**
 * Heated defrosts wait some minutes before they feed again, so that melt drips off. Where the valve shows such a
 * wait and later none, its setting was lost: fans throw the melt and it freezes on them.
 */
export function lostDrip(signals: CircuitSignals): Evidence[] {
  const { circuit, log, defrostSource } = signals;
  if (circuit.valve === null || defrostSource !== 'status' || circuit.defrost.kind === 'off-cycle') return [];
  const threshold = runThreshold(circuit.valve);
  const step = stepMinutes(log.grid);
  if (step > 1) return [];
  const windows = completeDefrosts(signals);
  const waits = windows.map((window) => {
    for (let i = window.to; i < Math.min(log.grid.count, window.to + 30); i++)
      if (circuit.valve!.values[i]! > threshold) return (i - window.to) * step;
    return Number.NaN;
  });
  const change = levelChange(waits);
  if (change === null || change.before < plainDripMinutes || change.after >= 1 || change.scatter > 1)
    return [];
  return [
    evidenceOf(signals, {
      shape: 'drip-lost',
      probe: null,
      from: windows[change.at]!.from,
      certainty: 0.6,
      measures: [measure('dripTime', change.after, 'min'), measure('usualDripTime', change.before, 'min')],
      features: { dripMinutes: change.after },
    }),
  ];
}
