import type { Random } from '../random.ts';
import type { CircuitState } from './circuit-state.ts';
import type { CircuitEffects } from './effects.ts';
import type { CircuitParameters } from './parameters.ts';

export const openLead = -45;
export const shortedLead = 150;

/** Lag of each probe behind its air, over `seconds`. A moved probe sits part of the way into the return air. */
export function advanceProbes(
  parameters: CircuitParameters,
  state: CircuitState,
  effects: CircuitEffects,
  load: number,
  seconds: number,
  readings: Float64Array,
): void {
  const rise = parameters.returnRise * Math.min(1.6, load) * (state.mode === 'cooling' ? 1 : 0.7);
  for (let i = 0; i < parameters.sections; i++) {
    const around = state.air[i]! + effects.probeMoved[i]! * rise;
    state.probe[i] = state.probe[i]! + ((around - state.probe[i]!) * seconds) / parameters.probeSeconds;
    if (effects.probeState[i] === 0) {
      readings[i] = state.probe[i]! + parameters.probeOffsets[i]! + effects.probeBias[i]!;
    } else if (effects.probeState[i] === 2) readings[i] = openLead;
    else if (effects.probeState[i] === 3) readings[i] = shortedLead;
  }
}

/** What the logger writes of reading `i`: with its noise, unless the channel holds a stuck value or a rail. */
export function loggedReading(
  parameters: CircuitParameters,
  effects: CircuitEffects,
  readings: Float64Array,
  i: number,
  random: Random,
): number {
  if (effects.probeState[i] !== 0) return readings[i]!;
  const noise = parameters.probeNoise * random.normal();
  const scatter = effects.probeScatter[i]!;
  if (scatter === 0) return readings[i]! + noise;
  return readings[i]! + noise + (random.chance(0.35) ? scatter * random.normal() : 0);
}
