import type { CircuitDisturbance, GroupDisturbance } from './effects.ts';

const ramp = (minute: number, from: number, over: number): number =>
  Math.min(1, Math.max(0, (minute - from) / Math.max(1, over)));

/** Airflow over one section falls while its melt freezes again instead of draining. */
export function icedEnd(
  section: number,
  onset: number,
  over: number,
  airflowLeft: number,
): CircuitDisturbance {
  return (effects, minute) => {
    if (minute < onset) return;
    effects.airflow[section] = 1 - (1 - airflowLeft) * ramp(minute, onset, over);
    effects.refreeze[section] = 0.9;
  };
}

/** A probe that reads `kelvin` high, at once (`over` 0) or creeping up over `over` minutes. */
export function lyingProbe(place: number, onset: number, over: number, kelvin: number): CircuitDisturbance {
  return (effects, minute) => {
    if (minute >= onset) effects.probeBias[place] = kelvin * (over === 0 ? 1 : ramp(minute, onset, over));
  };
}

/** The suction control aims `kelvin` of saturated temperature too high, reached over `over` minutes. */
export function suctionRise(onset: number, over: number, kelvin: number): GroupDisturbance {
  return (effects, minute) => {
    if (minute >= onset) effects.targetShift = kelvin * ramp(minute, onset, over);
  };
}
