import type { Random } from '../random.ts';
import type { Recorder } from '../recorder.ts';
import { saturationPressure } from '../saturation.ts';
import type { GroupHabits } from './parameters.ts';
import { createGroupSymptoms, type GroupSymptom, type GroupSymptoms } from './symptoms.ts';

/** Suction, machines and liquid of one group: one machine trims by random dwell, the others stand by load. */
export function createGroupRun(
  habits: GroupHabits,
  symptomsAt: readonly GroupSymptom[],
  random: Random,
  recorder: Recorder,
) {
  const owner = { group: habits.id };
  const suction = recorder.point('suction', 'pressure', owner);
  const setPoint = recorder.point('suction-set-point', 'pressure', owner);
  const discharge = recorder.point('discharge', 'pressure', owner);
  const level = recorder.point('liquid-level', 'fraction', owner);
  const machines = Array.from({ length: habits.machines }, (_, i) =>
    recorder.point('compressor', 'status', owner, i),
  );
  const running = machines.map((_, i) => i === 0);
  const state = { saturated: habits.saturated, suctionShift: 0 };
  const hours = random.branch('float');
  let floated = habits.float / 2;
  let free = floated;
  let left = 10;
  let trim = habits.machines - 1;
  let sway = 0;
  let drift = 0;
  let condensing = 32;
  let liquid = habits.liquidLevel;

  return {
    state,
    points: [suction, setPoint, ...machines, discharge, level],
    minute(minute: number, clock: number, outdoor: number): void {
      const symptoms = createGroupSymptoms();
      for (const apply of symptomsAt) apply(symptoms, minute);
      state.suctionShift = symptoms.suction;
      advanceFloat(clock, symptoms);
      stage(symptoms.trimMinutes, symptoms.trimRest, clock);
      if (symptoms.allMachinesOn) running.fill(true);
      if (symptoms.pulledDown)
        running.forEach((_, j) => {
          running[j] = j === 0 ? minute % 12 < 8 : minute % 20 < 15;
        });
      sway += ((running[trim] ? -0.5 : 0.5) * habits.suctionBand - sway) / 4;
      drift = 0.98 * drift + 0.06 * random.normal();
      const goal =
        habits.saturated + symptoms.suction + symptoms.suctionWithSetPoint + floated + drift + sway;
      state.saturated +=
        ((symptoms.pulledDown ? habits.saturated - 22 : goal) - state.saturated) /
        (symptoms.pulledDown ? 8 : 2);
      condensing += (Math.max(23, outdoor + habits.condenserRise) + symptoms.condensing - condensing) / 12;
      liquid += 0.02 * (habits.liquidLevel - liquid) + 0.003 * random.normal();
      if (minute < 0) return;
      suction.values[minute] = saturationPressure(habits.refrigerant, state.saturated) + 2 * random.normal();
      setPoint.values[minute] = saturationPressure(
        habits.refrigerant,
        habits.saturated + symptoms.suctionWithSetPoint + floated,
      );
      discharge.values[minute] = saturationPressure(habits.refrigerant, condensing) + 8 * random.normal();
      level.values[minute] = Math.min(1, Math.max(0, liquid * symptoms.liquidShare));
      machines.forEach((point, j) => {
        point.values[minute] = running[j] ? 1 : 0;
      });
    },
  };

  /** Moved once an hour, by chance and towards high by night and low by day. */
  function advanceFloat(clock: number, symptoms: GroupSymptoms): void {
    if (habits.float === 0 || clock % 60 !== 0) return;
    const night = clock < 420 || clock >= 1260;
    const step = 0.12 * habits.float * ((night ? 1 : -1) + 1.3 * hours.normal());
    free = Math.min(habits.float, Math.max(0, free + step));
    floated = symptoms.floatFixed ?? (symptoms.floatAtLowest ? Math.max(0, floated - 0.5) : free);
  }

  function stage(trimMinutes: number, trimRest: number, clock: number): void {
    left -= 1;
    if (left > 0) return;
    running[trim] = !running[trim];
    if (trimMinutes > 0) {
      trim = habits.machines - 1;
      left = running[trim] ? trimMinutes : trimRest;
      return;
    }
    const busy = clock > 480 && clock < 1260 ? 0.6 : 0.45;
    left = Math.max(
      4,
      habits.dwellMinutes * (running[trim] ? busy : 1 - busy) * 2 * random.between(0.6, 1.4),
    );
    if (running[trim] || !random.chance(0.3)) return;
    const previous = trim;
    trim = (trim + 1) % habits.machines;
    running[previous] = running[trim]!;
    running[trim] = false;
    for (let j = 0; j < running.length; j++)
      if (j !== trim && j !== previous) running[j] = random.chance(0.92) ? running[j]! : true;
  }
}
