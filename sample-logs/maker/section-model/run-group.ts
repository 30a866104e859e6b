import type { Random } from '../random.ts';
import type { Recorder } from '../recorder.ts';
import { saturationPressure } from '../saturation.ts';
import { createGroupEffects, type GroupDisturbance, resetGroupEffects } from './effects.ts';
import { createFloatingTarget } from './floating-target.ts';
import type { GroupParameters } from './parameters.ts';
import { advanceSuction, createSuctionState } from './suction.ts';

/** One suction group on its way through the log. */
export function createGroupRun(
  group: GroupParameters,
  disturbances: readonly GroupDisturbance[],
  random: Random,
  recorder: Recorder,
) {
  const state = createSuctionState(group);
  const effects = createGroupEffects();
  const owner = { group: group.id };
  const suction = recorder.point('suction', 'pressure', owner);
  const setPoint = recorder.point('suction-set-point', 'pressure', owner);
  const discharge = recorder.point('discharge', 'pressure', owner);
  const level = recorder.point('liquid-level', 'fraction', owner);
  const machines = group.capacities.map((_, i) => recorder.point('compressor', 'status', owner, i));
  const usualTarget = saturationPressure(group.refrigerant, group.target);
  const float = createFloatingTarget(group.float, random.branch('float'));
  let floated = 0;
  let liquid = group.liquidLevel;
  return {
    state,
    points: [suction, setPoint, ...machines, discharge, level],
    minute(minute: number, outdoor: number): void {
      resetGroupEffects(effects);
      for (const disturb of disturbances) disturb(effects, minute);
      floated = float.advance(minute, effects);
      liquid += 0.01 * (group.liquidLevel + 0.0015 * (outdoor - 20) - liquid) + 0.0012 * random.normal();
      if (minute < 0) return;
      suction.values[minute] = saturationPressure(group.refrigerant, state.saturated) + 1.2 * random.normal();
      setPoint.values[minute] =
        floated + effects.targetShift === 0 || (floated === 0 && !effects.targetLogged)
          ? usualTarget
          : saturationPressure(
              group.refrigerant,
              group.target + floated + (effects.targetLogged ? effects.targetShift : 0),
            );
      discharge.values[minute] =
        saturationPressure(group.refrigerant, state.condensing) + 6 * random.normal();
      level.values[minute] = Math.min(1, Math.max(0, liquid * effects.liquidShare));
      for (let j = 0; j < machines.length; j++) machines[j]!.values[minute] = state.running[j]!;
    },
    advance(evaporated: number, outdoor: number, seconds: number): void {
      advanceSuction(group, state, effects, { evaporated, outdoor, floated }, seconds);
    },
  };
}
