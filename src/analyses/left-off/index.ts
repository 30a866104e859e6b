import type { Evidence, Verdict } from '../../model/evidence.ts';
import type { CircuitSignals, GroupSignals, Signals } from '../../signals/types.ts';
import { abstention, circuitSubject } from '../evidence-parts.ts';
import { changedSetPoint } from './changed-set-point.ts';
import { heldInCooling } from './held-in-cooling.ts';
import { circuitHours, hourlyOpening } from './hours.ts';
import { meta } from './meta.ts';
import { isSetPointLogged, overcooled } from './overcooled.ts';
import { openStretches, overrides } from './override.ts';
import { setPointsLeft } from './set-points.ts';
import { stoppedCycling } from './stopped-cycling.ts';
import { stops } from './stops.ts';

export { meta };

/** A circuit that was stopped and stayed so, a valve left in hand, a set point left changed after a visit or without one. */
export function analyse(signals: CircuitSignals, group: GroupSignals | null, site: Signals): Verdict {
  const abstentions =
    signals.circuit.valve === null
      ? [
          abstention(
            meta.id,
            circuitSubject(signals.circuit),
            'No valve is logged: a stop shows only once the air is far too warm, and an override only where the air used to cycle and stands cold.',
            'the valve of the circuit',
          ),
        ]
      : [];
  const left = setPointsLeft(signals);
  return {
    evidence: [
      ...stops(signals, group, site),
      ...leftInHand(signals),
      ...(left.length > 0 ? left : changedSetPoint(signals)),
    ],
    abstentions,
  };
}

/** By the hours in which the valve stood open, or the air far under a logged set point; few circuits have any. */
function leftInHand(signals: CircuitSignals): Evidence[] {
  const stopped = stoppedCycling(signals);
  if (stopped.length > 0) return stopped;
  const opening = hourlyOpening(signals);
  if (openStretches(opening).length === 0 && !isSetPointLogged(signals)) return [];
  const hours = circuitHours(signals, opening);
  const held = heldInCooling(signals, hours);
  const feeding = overrides(signals, hours).filter(({ end }) => held.length === 0 || end !== null);
  const forced = [...held, ...feeding];
  return forced.length > 0 ? forced : overcooled(signals, hours);
}
