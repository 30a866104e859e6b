import { asLogged } from '../as-logged.ts';
import { localMidnight } from '../calendar.ts';
import { createRandom } from '../random.ts';
import type { SimulatedStore } from '../simulated-store.ts';
import type { StoreRequest } from '../store-request.ts';
import { truthOf } from '../truth-of.ts';
import { drawHabits } from './draw-habits.ts';
import { planLookAlike } from './look-alikes.ts';
import { planFault } from './plan-fault.ts';
import { runHabits } from './run-store.ts';
import type { CircuitSymptom, GroupSymptom } from './symptoms.ts';

/** A store-month of the lumped model: curves by habit, faults by the signatures they leave. */
export function simulateLumped(request: StoreRequest): SimulatedStore {
  const random = createRandom(request.seed).branch('lumped');
  const days = request.days ?? 30;
  const habits = drawHabits(random.branch('store'), request);
  const startMs = localMidnight(habits.timeZone, request.startDate ?? '2026-09-01');
  const busy = new Set<string>();
  const faults = (request.faults ?? []).map((fault, i) => {
    const planned = planFault(fault, habits, days, random.branch(`fault ${i}`), busy);
    if (planned.truth.circuit !== null) busy.add(planned.circuitId);
    if (planned.swappedWith !== null) busy.add(planned.swappedWith.circuit);
    return planned;
  });
  const lookAlikes = (request.lookAlikes ?? []).map((what) => {
    const planned = planLookAlike(
      what,
      habits.groups[0]!,
      days,
      random.branch(what),
      busy,
      request.lookAlikeDay,
    );
    if (planned.truth.circuit !== null) busy.add(planned.truth.circuit);
    return planned;
  });
  const circuits = new Map<string, CircuitSymptom[]>();
  const groups = new Map<string, GroupSymptom[]>();
  const add = <T>(map: Map<string, T[]>, id: string, symptom: T | undefined): void => {
    if (symptom !== undefined) map.set(id, [...(map.get(id) ?? []), symptom]);
  };
  for (const { circuitId, groupId, signs } of faults) {
    add(circuits, circuitId, signs.circuit);
    for (const one of habits.groups.find((group) => group.id === groupId)!.circuits) {
      add(circuits, one.id, signs.everyCircuit);
      add(circuits, one.id, signs.eachCircuit?.(one));
    }
    add(groups, groupId, signs.group);
  }
  for (const lookAlike of lookAlikes) {
    for (const { id, apply } of lookAlike.circuits) add(circuits, id, apply);
    for (const { id, apply } of lookAlike.groups) add(groups, id, apply);
  }
  const lived = runHabits(habits, {
    seed: request.seed,
    startMs,
    days,
    humidDays: lookAlikes.find(({ humidDays }) => humidDays !== null)?.humidDays ?? null,
    warmDays: lookAlikes.find(({ warmDays }) => warmDays !== null)?.warmDays ?? null,
    circuits,
    groups,
    truth: truthOf({ simulator: 'lumped-model', seed: request.seed, startMs }, faults, lookAlikes),
  });
  return asLogged(lived, faults, request, random);
}
