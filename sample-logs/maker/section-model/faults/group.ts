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

/** Pressure band narrowed and restart delays taken out. */
export function tightSuctionBand(onset: number, factor: number): GroupDisturbance {
  return (effects, minute) => {
    if (minute < onset) return;
    effects.differentialFactor = factor;
    effects.delaysOff = true;
  };
}

export function lowPressureTrips(onset: number): GroupDisturbance {
  return (effects, minute) => {
    if (minute >= onset) effects.lowPressureTrips = true;
  };
}

export function dirtyCondenser(onset: number, kelvin: number): GroupDisturbance {
  return (effects, minute) => {
    if (minute >= onset) effects.condensingRise = kelvin;
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
