import type { Calendar } from '../model/grid.ts';
import { dayAt } from '../model/grid.ts';
import type { CircuitSignals, SetPointStep } from './types.ts';

/** Steps within a day of each other on this share of a group's circuits come from the group. */
const sharedShare = 0.4;

/**
 * Takes back steps that were read from the level alone when several circuits of one suction group made them at
 * the same time: that is the rack, not a set point.
 */
export function withoutSharedSteps(
  circuits: readonly CircuitSignals[],
  calendar: Calendar,
): CircuitSignals[] {
  return circuits.map((one) => {
    const peers = circuits.filter((other) => other.circuit.suctionGroup === one.circuit.suctionGroup);
    const isShared = (step: SetPointStep) => {
      const alike = peers.filter((peer) => peer.setPointSteps.some((other) => isSame(step, other, calendar)));
      return alike.length > 1 && alike.length >= sharedShare * peers.length;
    };
    const steps = one.setPointSteps.filter((step) => step.source === 'column' || !isShared(step));
    return steps.length === one.setPointSteps.length ? one : { ...one, setPointSteps: steps };
  });
}

function isSame(step: SetPointStep, other: SetPointStep, calendar: Calendar): boolean {
  const apart = Math.abs(dayAt(calendar, step.at) - dayAt(calendar, other.at));
  return apart <= 1 && Math.sign(step.to - step.from) === Math.sign(other.to - other.from);
}
