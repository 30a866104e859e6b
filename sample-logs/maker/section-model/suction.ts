import type { GroupEffects } from './effects.ts';
import type { GroupParameters } from './parameters.ts';

export interface SuctionState {
  /** Saturated suction temperature, Celsius. */
  saturated: number;
  readonly running: Uint8Array;
  /** Seconds since each machine last changed. */
  readonly since: Float64Array;
  sinceStage: number;
  condensing: number;
}

export function createSuctionState(group: GroupParameters): SuctionState {
  return {
    saturated: group.target,
    running: Uint8Array.from(group.capacities, (_, i) => (i === 0 ? 1 : 0)),
    since: new Float64Array(group.capacities.length).fill(3600),
    sinceStage: 60,
    condensing: 32,
  };
}

/** Kelvin under the target at which the low-pressure cut-out stops a machine. */
const cutOutBelow = 14;

/** Balance of evaporated and pumped heat on the suction side, and the staging of the machines. */
export function advanceSuction(
  group: GroupParameters,
  state: SuctionState,
  effects: GroupEffects,
  evaporated: number,
  outdoor: number,
  seconds: number,
): void {
  const target = group.target + effects.targetShift;
  let pumped = 0;
  for (let j = 0; j < state.running.length; j++) {
    state.since[j] = state.since[j]! + seconds;
    if (state.running[j])
      pumped +=
        group.capacities[j]! *
        effects.capacityShare *
        Math.max(0.05, 1 + 0.033 * (state.saturated - group.target));
  }
  state.saturated = Math.max(
    group.target - 24,
    state.saturated + ((evaporated - pumped) * seconds) / group.inertia,
  );
  state.sinceStage += seconds;
  stage(group, state, effects, target);
  const aim = Math.max(
    group.condensingFloor,
    outdoor + group.condenserRise * (0.6 + 0.4 * share(group, state)) + effects.condensingRise,
  );
  state.condensing += ((aim - state.condensing) * seconds) / 400;
}

function share(group: GroupParameters, state: SuctionState): number {
  let on = 0;
  let all = 0;
  for (let j = 0; j < group.capacities.length; j++) {
    all += group.capacities[j]!;
    if (state.running[j]) on += group.capacities[j]!;
  }
  return on / all;
}

function stage(group: GroupParameters, state: SuctionState, effects: GroupEffects, target: number): void {
  const { running, since } = state;
  const half = (group.differential * effects.differentialFactor) / 2;
  const offDelay = effects.delaysOff ? 0 : group.minimumOffSeconds;
  const runDelay = effects.delaysOff ? 0 : group.minimumRunSeconds;
  const stageDelay = effects.delaysOff ? 15 : group.stageSeconds;
  if (effects.forcedOn || effects.lowPressureTrips) {
    const cutOut = target - (effects.lowPressureTrips ? 2.2 : cutOutBelow);
    for (let j = 0; j < running.length; j++) {
      if (running[j] && state.saturated < cutOut) set(state, j, 0);
      else if (effects.forcedOn && !running[j] && since[j]! > 600 && state.saturated > cutOut + 2)
        set(state, j, 1);
    }
    if (effects.forcedOn) return;
  }
  if (state.sinceStage < stageDelay) return;
  if (state.saturated > target + half) {
    const next = pick(since, running, 0, offDelay, effects.delaysOff);
    if (next >= 0) set(state, next, 1);
  } else if (state.saturated < target - half) {
    const next = pick(since, running, 1, runDelay, effects.delaysOff);
    if (next >= 0) set(state, next, 0);
  }
}

/**
 * The machine that has been longest in this state, so that they wear alike, or with `lastAgain` the one
 * that changed last; −1 when none may change.
 */
function pick(
  since: Float64Array,
  running: Uint8Array,
  state: number,
  delay: number,
  lastAgain: boolean,
): number {
  let best = -1;
  for (let j = 0; j < running.length; j++) {
    if (running[j] !== state || since[j]! < delay) continue;
    if (best < 0 || lastAgain === since[j]! < since[best]!) best = j;
  }
  return best;
}

function set(state: SuctionState, machine: number, on: 0 | 1): void {
  state.running[machine] = on;
  state.since[machine] = 0;
  state.sinceStage = 0;
}
