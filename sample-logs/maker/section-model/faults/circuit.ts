import type { CircuitDisturbance } from '../effects.ts';
import { ramp } from './place.ts';

/** Refrigerant feed falls to `left` of the usual. */
export function starvedCoil(onset: number, over: number, left: number): CircuitDisturbance {
  return (effects, minute) => {
    if (minute >= onset) effects.feeding = 1 - (1 - left) * ramp(minute, onset, over);
  };
}

/** Airflow over every section falls to `left`. */
export function dirtyCoil(onset: number, over: number, left: number): CircuitDisturbance {
  return (effects, minute) => {
    if (minute >= onset) effects.airflow.fill(1 - (1 - left) * ramp(minute, onset, over));
  };
}

/** Of every `of` scheduled defrosts (by the clock), only the first `kept` run. */
export function missedDefrosts(
  onset: number,
  starts: readonly number[],
  kept: (start: number) => boolean,
): CircuitDisturbance {
  const skipped = new Set(starts.filter((start) => !kept(start)));
  return (effects, minute) => {
    if (minute >= onset && skipped.has(minute % 1440)) effects.skipDefrost = true;
  };
}

export function weakHeater(onset: number, left: number): CircuitDisturbance {
  return (effects, minute) => {
    if (minute >= onset) effects.defrostHeat = left;
  };
}

export function deafTermination(onset: number): CircuitDisturbance {
  return (effects, minute) => {
    if (minute >= onset) effects.terminationWorks = false;
  };
}

/** A valve that opens and shuts every `minutes`. */
export function pulsedValve(onset: number, minutes: number): CircuitDisturbance {
  return (effects, minute) => {
    if (minute >= onset) effects.pulseSeconds = minutes * 60;
  };
}

/** Shut off or held open by hand from `from` to `to`. */
export function forced(how: 'off' | 'on', from: number, to: number): CircuitDisturbance {
  return (effects, minute) => {
    if (minute >= from && minute < to) effects.forced = how;
  };
}

export function movedSetPoint(from: number, to: number, kelvin: number): CircuitDisturbance {
  return (effects, minute) => {
    if (minute >= from && minute < to) effects.setPointShift += kelvin;
  };
}

/** A clock that jumps to `minutes` ahead of the time of day (behind it where negative). */
export function clockAhead(onset: number, minutes: number): CircuitDisturbance {
  return (effects, minute) => {
    if (minute >= onset) effects.clockAhead = minutes;
  };
}

/** All valves of a group opened by one clock every `minutes`, while `isOn`. */
export function pulsedInStep(minutes: number, isOn: (minute: number) => boolean): CircuitDisturbance {
  return (effects, minute) => {
    if (!isOn(minute)) return;
    effects.pulseSeconds = minutes * 60;
    effects.pulseInStep = true;
  };
}

/** Shut off for work from `from` to `to`, its set point moved by `kelvin` meanwhile and until `restored`. */
export function workedOn(from: number, to: number, restored: number, kelvin: number): CircuitDisturbance {
  const off = forced('off', from, to);
  const moved = movedSetPoint(from + 10, restored, kelvin);
  return (effects, minute) => {
    off(effects, minute);
    moved(effects, minute);
  };
}

/** Set point moved by `kelvin` every night between two minutes of the day. */
export function nightSetBack(fromMinute: number, toMinute: number, kelvin: number): CircuitDisturbance {
  return (effects, minute) => {
    const clock = ((minute % 1440) + 1440) % 1440;
    if (clock >= fromMinute || clock < toMinute) effects.setPointShift += kelvin;
  };
}

/** A door that stands open from `onset` on: `extra` times the usual infiltration comes in beside it. */
export function doorAjar(onset: number, extra: number): CircuitDisturbance {
  return (effects, minute) => {
    if (minute >= onset) effects.load += extra;
  };
}

/** Extra load, times the usual, in each of the spells (start, end in minutes). */
export function extraLoad(spells: readonly (readonly [number, number])[], share: number): CircuitDisturbance {
  return (effects, minute) => {
    for (const [from, to] of spells) if (minute >= from && minute < to) effects.load += share;
  };
}
