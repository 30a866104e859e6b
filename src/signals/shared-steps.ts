import { median } from '../maths/median.ts';
import type { Calendar } from '../model/grid.ts';
import { dayAt } from '../model/grid.ts';
import { pressurePerKelvin } from '../refrigerants/pressure-per-kelvin.ts';
import type { Kelvin } from '../units/quantities.ts';
import type { CircuitSignals, SetPointStep } from './types.ts';

/** Steps within a day of each other on this share of a group's circuits come from the group. */
const sharedShare = 0.4;
/** A suction that goes up by so much, and by this share of what the air does, took the air with it. */
const suctionStep: Kelvin = 1.2;
const suctionShare = 0.5;
const reachDays = 3;

/**
 * Takes back steps that were read from the level alone when several circuits of one suction group made them at
 * the same time, or when the suction pressure of the group stepped up with them: that is the rack, not a set point. `suction` is the
 * daily pressure by group, kPa absolute.
 */
export function withoutSharedSteps(
  circuits: readonly CircuitSignals[],
  suction: ReadonlyMap<string, Float64Array>,
  calendar: Calendar,
): CircuitSignals[] {
  return circuits.map((one) => {
    const peers = circuits.filter((other) => other.circuit.suctionGroup === one.circuit.suctionGroup);
    const pressure = suction.get(one.circuit.suctionGroup ?? '');
    const isShared = (step: SetPointStep) => {
      const alike = peers.filter((peer) => peer.setPointSteps.some((other) => isSame(step, other, calendar)));
      return alike.length > 1 && alike.length >= sharedShare * peers.length;
    };
    const steps = one.setPointSteps.filter(
      (step) => step.source === 'column' || !(isShared(step) || isOfSuction(step, pressure, calendar)),
    );
    return steps.length === one.setPointSteps.length ? one : { ...one, setPointSteps: steps };
  });
}

function isSame(step: SetPointStep, other: SetPointStep, calendar: Calendar): boolean {
  const apart = Math.abs(dayAt(calendar, step.at) - dayAt(calendar, other.at));
  return apart <= 1 && Math.sign(step.to - step.from) === Math.sign(other.to - other.from);
}

/** Air that went up while the suction went up by as much as can have done it. */
function isOfSuction(
  { at, from, to }: SetPointStep,
  days: Float64Array | undefined,
  calendar: Calendar,
): boolean {
  if (days === undefined || to <= from) return false;
  const day = dayAt(calendar, at);
  const before = median(days.subarray(Math.max(0, day - reachDays), day));
  const after = median(days.subarray(day + 1, day + 1 + reachDays));
  const rise = Math.log(after / before) / pressurePerKelvin;
  return rise >= Math.max(suctionStep, suctionShare * (to - from));
}
