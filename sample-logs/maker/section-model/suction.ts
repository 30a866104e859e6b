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

/** Kelvin under the target to which a group is pulled down for work: from 50 psig to about 10. */
const cutOutBelow = 22;

/** The same while the rack runs by itself. */
const cutOutInService = 7;

/** Balance of evaporated and pumped heat on the suction side, and the staging of the machines. */
export function advanceSuction(
  group: GroupParameters,
  state: SuctionState,
  effects: GroupEffects,
  around: { readonly evaporated: number; readonly outdoor: number; readonly floated: number },
  seconds: number,
): void {
  const { evaporated, outdoor, floated } = around;
  const target = group.target + floated + effects.targetShift;
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
  if (effects.forcedOn) {
    pullDown(state, group.target - cutOutBelow);
    return;
  }
  const half = group.differential / 2;
  if (state.saturated < group.target - cutOutInService) {
    for (let j = 0; j < running.length; j++) if (running[j]) set(state, j, 0);
    return;
  }
  const trims = trimAlone(state, effects, target, half);
  if (state.sinceStage < group.stageSeconds) return;
  const others = trims ? running.length - 1 : running.length;
  if (state.saturated > target + half) {
    set(state, longest(since, running, others, 0, group.minimumOffSeconds), 1);
  } else if (state.saturated < target - half) {
    set(state, longest(since, running, others, 1, group.minimumRunSeconds), 0);
  }
}

/** Machines held on by hand: only the low-pressure cut-out stops them. */
function pullDown(state: SuctionState, cutOut: number): void {
  for (let j = 0; j < state.running.length; j++) {
    if (state.running[j] && state.saturated < cutOut) set(state, j, 0);
    else if (!state.running[j] && state.since[j]! > 600 && state.saturated > cutOut + 2) set(state, j, 1);
  }
}

/** The last machine on its own, tripping and restarting with no delay worth the name. False when it behaves. */
function trimAlone(state: SuctionState, effects: GroupEffects, target: number, half: number): boolean {
  if (effects.trim === null) return false;
  const { running, since, saturated } = state;
  const last = running.length - 1;
  const { runSeconds, offSeconds } = effects.trim;
  let on = running[last]!;
  if (on && since[last]! >= runSeconds && saturated < target + effects.trim.holdsAbove * half) on = 0;
  else if (!on && since[last]! >= offSeconds && saturated > target - half) on = 1;
  if (on !== running[last]) {
    running[last] = on;
    since[last] = 0;
  }
  return true;
}

/** The machine that has been longest in this state, so that they wear alike; −1 when none may change. */
function longest(
  since: Float64Array,
  running: Uint8Array,
  machines: number,
  state: number,
  delay: number,
): number {
  let best = -1;
  for (let j = 0; j < machines; j++) {
    if (running[j] !== state || since[j]! < delay) continue;
    if (best < 0 || since[j]! > since[best]!) best = j;
  }
  return best;
}

function set(state: SuctionState, machine: number, on: 0 | 1): void {
  if (machine < 0) return;
  state.running[machine] = on;
  state.since[machine] = 0;
  state.sinceStage = 0;
}
