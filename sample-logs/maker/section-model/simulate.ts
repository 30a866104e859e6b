import { localMidnight } from '../calendar.ts';
import { createRandom } from '../random.ts';
import { reachedThree } from '../reached-three.ts';
import type { SimulatedStore } from '../simulated-store.ts';
import type { StoreRequest } from '../store-request.ts';
import { drawStore } from './draw-store.ts';
import type { CircuitDisturbance, GroupDisturbance } from './effects.ts';
import { planFault } from './plan-faults.ts';
import { runStore } from './run-store.ts';

/** A store-month of the section model: its physics, faults and look-alikes all follow from the request. */
export function simulateSections(request: StoreRequest): SimulatedStore {
  const random = createRandom(request.seed);
  const days = request.days ?? 30;
  const parameters = drawStore(random.branch('store'), {
    ...request,
    ...(request.first === undefined ? {} : { wishes: [request.first] }),
  });
  const startMs = localMidnight(parameters.timeZone, request.startDate ?? '2026-09-01');
  const circuits = new Map<string, CircuitDisturbance[]>();
  const groups = new Map<string, GroupDisturbance[]>();
  const planned = (request.faults ?? []).map((fault, i) =>
    planFault(fault, parameters, days, random.branch(`fault ${i}`)),
  );
  for (const { circuit, group } of planned) {
    if (circuit !== null) circuits.set(circuit.id, [...(circuits.get(circuit.id) ?? []), circuit.disturb]);
    if (group !== null) groups.set(group.id, [...(groups.get(group.id) ?? []), group.disturb]);
  }
  const store = runStore(parameters, {
    seed: request.seed,
    startMs,
    days,
    weather: {},
    circuits,
    groups,
    truth: { simulator: 'section-model', seed: request.seed, faults: [], lookAlikes: [] },
  });
  const faults = planned.map(({ truth }) => {
    const fault = {
      ...truth,
      onset: startMs + truth.onset * 60_000,
      end: truth.end === null ? null : startMs + truth.end * 60_000,
      reachedThree: null,
    };
    return { ...fault, reachedThree: reachedThree(store, fault) };
  });
  return { ...store, truth: { ...store.truth, faults } };
}
