import { samplesIn } from '../../model/grid.ts';
import { targetAt } from '../../model/record.ts';
import { runThreshold } from '../../signals/run-threshold.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { Phase } from '../../signals/types.ts';
import { settings } from './settings.ts';

/**
 * 1 at the samples at which superheat means something: settled air within 5 °F of the set point, and the valve has
 * fed for 5 minutes. Between feedings, and just after opening, it reads 20 °F and more and means nothing.
 */
export function settledFeeding(signals: CircuitSignals): Uint8Array {
  const { circuit, phase, air, log } = signals;
  const valve = circuit.valve!;
  const threshold = runThreshold(valve);
  const wait = samplesIn(log.grid, settings.feedingMinutes.value);
  const settled = new Uint8Array(log.grid.count);
  let fed = 0;
  for (let i = 0; i < settled.length; i++) {
    fed = valve.values[i]! > threshold ? fed + 1 : 0;
    if (fed <= wait || phase[i] !== Phase.cooling) continue;
    const away = circuit.setPoint === null ? 0 : air[i]! - targetAt(circuit.setPoint, i);
    if (Math.abs(away) <= settings.nearSetPoint.value) settled[i] = 1;
  }
  return settled;
}
