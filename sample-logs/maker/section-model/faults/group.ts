import type { GroupDisturbance } from '../effects.ts';
import { ramp } from './place.ts';

/** The suction control aims `kelvin` of saturated temperature too high. */
export function suctionRise(onset: number, over: number, kelvin: number): GroupDisturbance {
  return (effects, minute) => {
    if (minute >= onset) effects.targetShift = kelvin * ramp(minute, onset, over);
  };
}

export function lostCapacity(onset: number, left: number): GroupDisturbance {
  return (effects, minute) => {
    if (minute >= onset) effects.capacityShare = left;
  };
}

/** A band too narrow and no restart delay: the last machine runs `minutes`, rests as long, unless suction is high. */
export function tightSuctionBand(onset: number, minutes: number): GroupDisturbance {
  const trim = { runSeconds: minutes * 60, offSeconds: minutes * 60, holdsAbove: 0.9 };
  return (effects, minute) => {
    if (minute >= onset) effects.trim = trim;
  };
}

/** The last machine trips on low pressure soon after each start, whatever the load, and resets by itself. */
export function lowPressureTrips(onset: number, runSeconds: number): GroupDisturbance {
  const trim = { runSeconds, offSeconds: 135, holdsAbove: Number.POSITIVE_INFINITY };
  return (effects, minute) => {
    if (minute >= onset) effects.trim = trim;
  };
}

export function dirtyCondenser(onset: number, kelvin: number): GroupDisturbance {
  return (effects, minute) => {
    if (minute >= onset) effects.condensingRise = kelvin;
  };
}

/**
 * A leak: for `over` minutes before `onset` the receiver empties to a tenth of its usual level, and nothing else is seen of it, for
 * its outlet is still under liquid.
 */
export function leakingReceiver(onset: number, over: number): GroupDisturbance {
  return (effects, minute) => {
    effects.liquidShare = 1 - 0.9 * ramp(minute, onset - over, over);
  };
}

/** The float is switched off: the target stands `kelvin` above its lowest from `onset` on. */
export function frozenFloat(onset: number, kelvin: number): GroupDisturbance {
  return (effects, minute) => {
    if (minute >= onset) effects.floatFixed = kelvin;
  };
}

/** The load of some circuit holds the float at its lowest: as it should. */
export function floatAtLowest(from: number): GroupDisturbance {
  return (effects, minute) => {
    if (minute >= from) effects.floatAtLowest = true;
  };
}

/** The logged target stands `kelvin` off its old value from `from` on. */
export function movedTarget(from: number, kelvin: number): GroupDisturbance {
  return (effects, minute) => {
    if (minute < from) return;
    effects.targetShift = kelvin;
    effects.targetLogged = true;
  };
}

/** A repair: machines forced on while the circuits are shut, so that suction is pulled far down. */
export function serviceVisit(from: number, to: number): GroupDisturbance {
  return (effects, minute) => {
    if (minute < from || minute >= to) return;
    effects.forcedOn = true;
    effects.targetShift = -9;
    effects.targetLogged = true;
  };
}
