import type { CircuitDisturbance } from '../effects.ts';

/** 0 before `from`, rising to 1 over `over` minutes. */
export function ramp(minute: number, from: number, over: number): number {
  return Math.min(1, Math.max(0, (minute - from) / Math.max(1, over)));
}

/** Airflow over one section falls to `left` while its melt freezes again instead of draining. */
export function icedEnd(place: number, onset: number, over: number, left: number): CircuitDisturbance {
  return (effects, minute) => {
    if (minute < onset) return;
    effects.airflow[place] = 1 - (1 - left) * ramp(minute, onset, over);
    effects.refreeze[place] = 0.9;
  };
}

/** Airflow over one section falls to `left` and nothing else happens: a fan (`over` 0), paper on a grille. */
export function lostAirflow(place: number, onset: number, over: number, left: number): CircuitDisturbance {
  return (effects, minute) => {
    if (minute >= onset)
      effects.airflow[place] = 1 - (1 - left) * (over === 0 ? 1 : ramp(minute, onset, over));
  };
}

/**
 * Store air that comes in at one section from `onset` on, in defrost as well: `leak` times its usual infiltration, of which
 * `byTrade` (0 to 1) follows the trading day as a spoiled curtain does and the rest comes at all hours, as by a door
 * or a gasket. Over its coil `airflow` of the usual is left, where goods stand before its return.
 */
export function leakingEnd(
  place: number,
  onset: number,
  leak: number,
  byTrade: number,
  airflow: number,
): CircuitDisturbance {
  return (effects, minute) => {
    if (minute < onset) return;
    effects.leak[place] = leak * (1 - byTrade);
    effects.curtainLeak[place] = leak * byTrade;
    effects.airflow[place] = airflow;
  };
}

/** A probe that reads `kelvin` high, at once (`over` 0) or creeping up. The controller believes it. */
export function lyingProbe(place: number, onset: number, over: number, kelvin: number): CircuitDisturbance {
  return (effects, minute) => {
    if (minute >= onset) effects.probeBias[place] = kelvin * (over === 0 ? 1 : ramp(minute, onset, over));
  };
}

/** A probe that fell out of its clip, `share` of the way from discharge into return air. */
export function movedProbe(place: number, onset: number, share: number): CircuitDisturbance {
  return (effects, minute) => {
    if (minute >= onset) effects.probeMoved[place] = share;
  };
}

/** A wet splice: readings scatter by `kelvin` from sample to sample. */
export function flutteringProbe(place: number, onset: number, kelvin: number): CircuitDisturbance {
  return (effects, minute) => {
    if (minute >= onset) effects.probeScatter[place] = kelvin;
  };
}

export function failedProbe(
  place: number,
  onset: number,
  how: 'stuck' | 'open' | 'short',
): CircuitDisturbance {
  const state = how === 'stuck' ? 1 : how === 'open' ? 2 : 3;
  return (effects, minute) => {
    if (minute >= onset) effects.probeState[place] = state;
  };
}
