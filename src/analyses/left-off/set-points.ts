import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import { samplesIn } from '../../model/grid.ts';
import { type CircuitSignals, Phase, type SetPointStep } from '../../signals/types.ts';
import { measure } from '../evidence-parts.ts';
import { evidenceOf } from './evidence.ts';
import { settings } from './settings.ts';

/**
 * A set point that was changed during a visit (a stop of the circuit within half a day of it) and has not come back.
 * A change without a visit is a change of intent and is not reported here.
 */
export function setPointsLeft(signals: CircuitSignals): Evidence[] {
  const steps = signals.setPointSteps;
  const visits = visitsOf(signals);
  const first = steps.findIndex((step) => isNear(step, visits, signals) || wasWarmed(step, signals));
  const change = steps[first];
  if (change === undefined) return [];
  // Only the steps count: what else the air did between two of them was no set point.
  let moved = 0;
  let isRestored = false;
  for (const { from, to } of steps.slice(first)) {
    moved += to - from;
    if (Math.abs(moved) <= settings.restoredWithin.value) isRestored = true;
  }
  if (isRestored) return [];
  return [
    evidenceOf(signals, {
      shape: 'set-point-left',
      from: change.at,
      to: null,
      certainty: change.source === 'column' ? 0.85 : 0.5,
      measures: [
        measure('setPointBefore', change.from, 'Cel'),
        measure('setPointNow', change.from + moved, 'Cel'),
        measure('setPointChange', moved, 'K'),
      ],
      features: { setPointChange: moved, fromColumn: change.source === 'column' ? 1 : 0, still: 1 },
    }),
  ];
}

/** Times its usual length from which what was inferred as a defrost is a stop. */
const stopOverDefrost = 3;

function visitsOf({ offSpells, defrosts, log }: CircuitSignals) {
  const shortest = samplesIn(log.grid, settings.visitMinutes.value);
  const usual = median(defrosts.map(({ from, to }) => to - from));
  const stops = defrosts.filter(
    ({ source, from, to }) => source !== 'status' && to - from > stopOverDefrost * usual,
  );
  return [...offSpells, ...stops].filter(({ from, to }) => to - from >= shortest);
}

/**
 * Without a valve column: outside defrosts the air stood far above its set point, and once that was raised above the new one,
 * for a while about the step. By itself that is no stop, beside a step of the set point it is somebody's visit.
 */
function wasWarmed(step: SetPointStep, signals: CircuitSignals): boolean {
  const { circuit, air, phase, log } = signals;
  if (circuit.valve !== null) return false;
  const reach = samplesIn(log.grid, 60 * settings.visitReach.value);
  const limit = step.from + settings.visitRise.value;
  const raised = Math.max(0, step.to - step.from);
  let warm = 0;
  for (let i = Math.max(0, step.at - reach); i < Math.min(air.length, step.at + reach); i++)
    if (air[i]! > limit + (i < step.at ? 0 : raised) && phase[i] === Phase.cooling) warm++;
  return warm >= samplesIn(log.grid, settings.visitMinutes.value);
}

function isNear(
  step: SetPointStep,
  visits: readonly { readonly from: number; readonly to: number }[],
  { log }: CircuitSignals,
): boolean {
  const reach = samplesIn(log.grid, 60 * settings.visitReach.value);
  return visits.some(({ from, to }) => step.at >= from - reach && step.at <= to + reach);
}
