import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import { samplesIn, stepMinutes } from '../../model/grid.ts';
import { targetAt } from '../../model/record.ts';
import { runThreshold } from '../../signals/run-threshold.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { Phase } from '../../signals/types.ts';
import { measure } from '../evidence-parts.ts';
import { evidenceOf } from './evidence.ts';
import { settings } from './settings.ts';

/** A modulating valve that is forced stands nearly full open. */
const fullyOpen = 0.9;
/** A dead band that nobody stated. */
const usualDifferential = 1.1;

interface Forced {
  readonly from: number;
  readonly to: number;
  readonly under: number;
}

/**
 * A valve that feeds on and on while the air is well under the level at which the control would have shut it:
 * somebody put it in hand. Defrosts may interrupt it, if they still come.
 */
export function overrides(signals: CircuitSignals): Evidence[] {
  const { circuit, log } = signals;
  if (circuit.valve === null) return [];
  const step = stepMinutes(log.grid);
  const last = log.grid.count - samplesIn(log.grid, 60);
  return forcedStretches(signals)
    .filter(({ from, to }) => (to - from) * step >= settings.forcedMinutes.value)
    .map(({ from, to, under }) => {
      const isStill = to >= last;
      const hours = ((to - from) * step) / 60;
      return evidenceOf(signals, {
        shape: isStill ? 'override-on' : 'override-was-on',
        from,
        to: isStill ? null : to,
        certainty: 0.7 + Math.min(0.25, hours / 100),
        measures: [measure('hoursForced', hours, 'h'), measure('underSetPoint', under, 'K')],
        features: {
          hours,
          still: isStill ? 1 : 0,
          underSetPoint: under,
          defrostsSeen: defrostsIn(signals, from, to),
        },
      });
    });
}

function forcedStretches(signals: CircuitSignals): Forced[] {
  const { circuit, phase, air, log } = signals;
  const valve = circuit.valve!;
  const open = valve.quantity === 'fraction' ? fullyOpen : runThreshold(valve);
  const cutOut = (circuit.differential ?? usualDifferential) / 2;
  const reference = referenceAt(signals);
  const bridge = samplesIn(log.grid, 10);
  const stretches: Forced[] = [];
  let from = -1;
  let last = -1;
  let under: number[] = [];
  const close = () => {
    if (from >= 0) stretches.push({ from, to: last + 1, under: median(under) });
    from = -1;
    under = [];
  };
  for (let i = 0; i < log.grid.count; i++) {
    if (phase[i] === Phase.defrost || phase[i] === Phase.unknown) {
      if (from >= 0) last = i;
      continue;
    }
    const below = reference(i) - cutOut - air[i]!;
    const forced = valve.values[i]! >= open && below >= settings.forcedUnder.value;
    const isRecovering = phase[i] === Phase.recovery && valve.values[i]! >= open && from >= 0;
    if (forced) {
      if (from < 0) from = i;
      under.push(below + cutOut);
      last = i;
    } else if (isRecovering) last = i;
    else if (from >= 0 && i - last > bridge) close();
  }
  close();
  return stretches;
}

/** The set point at a sample, or where none is known the circuit's own usual air. */
function referenceAt(signals: CircuitSignals): (sample: number) => number {
  const { circuit, level } = signals;
  if (circuit.setPoint !== null) return (sample) => targetAt(circuit.setPoint, sample);
  const usual = median(level.subarray(0, Math.max(5, Math.ceil(level.length / 3))));
  return () => usual;
}

function defrostsIn(signals: CircuitSignals, from: number, to: number): number {
  return signals.defrosts.filter((window) => window.from >= from && window.to <= to).length;
}
