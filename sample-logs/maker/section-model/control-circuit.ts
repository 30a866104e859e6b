import type { CircuitState } from './circuit-state.ts';
import type { CircuitEffects } from './effects.ts';
import type { CircuitParameters } from './parameters.ts';

/** What the controller believes the air temperature is: open and shorted leads are left out, as controllers do. */
export function controlReading(
  parameters: CircuitParameters,
  readings: Float64Array,
  effects: CircuitEffects,
): number {
  const { controls } = parameters;
  if (typeof controls === 'number' && effects.probeState[controls]! < 2) return readings[controls]!;
  let sum = 0;
  let warmest = -Infinity;
  let used = 0;
  for (let i = 0; i < readings.length; i++) {
    if (effects.probeState[i]! >= 2) continue;
    sum += readings[i]!;
    warmest = Math.max(warmest, readings[i]!);
    used++;
  }
  if (used === 0) return parameters.setPoint;
  return controls === 'warmest' ? warmest : sum / used;
}

/** Opens and shuts the valve: hysteresis about the set point, or a proportional-integral position. */
export function controlValve(
  parameters: CircuitParameters,
  state: CircuitState,
  effects: CircuitEffects,
  reading: number,
  seconds: number,
): void {
  const setPoint = parameters.setPoint + effects.setPointShift;
  if (effects.forced === 'off' || state.mode !== 'cooling') {
    state.valve = 0;
    state.calling = false;
  } else if (effects.forced === 'on') {
    state.valve = 1;
    state.calling = true;
  } else if (effects.pulseSeconds > 0 && parameters.valve === 'on-off') {
    position(state, reading - setPoint, seconds);
    const clock = effects.pulseInStep ? state.elapsedSeconds : state.modeSeconds;
    state.calling = clock % effects.pulseSeconds < state.valve * effects.pulseSeconds;
    state.valve = state.calling ? 1 : 0;
  } else if (parameters.valve === 'on-off') {
    const half = parameters.differential / 2;
    if (reading > setPoint + half) state.calling = true;
    else if (reading < setPoint - half) state.calling = false;
    state.valve = state.calling ? 1 : 0;
  } else {
    position(state, reading - setPoint, seconds);
    state.calling = state.valve > 0.02;
  }
  state.fill += ((state.valve - state.fill) * seconds) / parameters.fillSeconds;
}

/** Proportional-integral valve position, 0 to 1. */
function position(state: CircuitState, error: number, seconds: number): void {
  state.integral = Math.min(1, Math.max(0, state.integral + (error * seconds) / 1500));
  state.valve = Math.min(1, Math.max(0, state.integral + 0.22 * error));
}

/** Starts, ends and drains defrosts. `minute` is the local minute of the day; called once a minute. */
export function controlDefrost(
  parameters: CircuitParameters,
  state: CircuitState,
  effects: CircuitEffects,
  minute: number,
): void {
  const { defrost } = parameters;
  const clock = (minute + effects.clockAhead + 2880) % 1440;
  if (state.mode === 'cooling') {
    if (effects.forced !== 'off' && !effects.skipDefrost && defrost.starts.includes(clock)) {
      state.mode = 'defrost';
      state.modeSeconds = 0;
    }
    return;
  }
  if (state.mode === 'drip') {
    if (state.modeSeconds >= defrost.dripMinutes * 60) {
      state.mode = 'cooling';
      state.fansDelay = defrost.fansRun ? 0 : 120;
    }
    return;
  }
  let coil = 0;
  for (let i = 0; i < parameters.sections; i++) coil += state.wall[i]! / parameters.sections;
  const warmEnough = defrost.endsAt !== null && effects.terminationWorks && coil >= defrost.endsAt;
  if (warmEnough || state.modeSeconds >= defrost.minutes * 60) {
    state.mode = defrost.dripMinutes > 0 ? 'drip' : 'cooling';
    state.modeSeconds = 0;
  }
}
