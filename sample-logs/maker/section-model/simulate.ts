import { asLogged } from '../as-logged.ts';
import { localMidnight } from '../calendar.ts';
import { createRandom } from '../random.ts';
import type { SimulatedStore } from '../simulated-store.ts';
import type { StoreRequest } from '../store-request.ts';
import { truthOf } from '../truth-of.ts';
import { drawStore } from './draw-store.ts';
import { planFault } from './faults/plan.ts';
import { planLookAlike } from './look-alikes.ts';
import { runStore } from './run-store.ts';

/** A store-month of the section model: its physics, faults and look-alikes all follow from the request. */
export function simulateSections(request: StoreRequest): SimulatedStore {
  const random = createRandom(request.seed);
  const days = request.days ?? 30;
  const { first, ...wishes } = request;
  const parameters = drawStore(random.branch('store'), {
    ...wishes,
    wishes: first === undefined ? [] : [first],
  });
  const startMs = localMidnight(parameters.timeZone, request.startDate ?? '2026-09-01');
  const busy = new Set<string>();
  const faults = (request.faults ?? []).map((fault, i) => {
    const planned = planFault(fault, parameters, days, random.branch(`fault ${i}`), busy);
    for (const { id } of planned.circuits) busy.add(id);
    if (planned.swappedWith !== null) busy.add(planned.truth.circuit!).add(planned.swappedWith.circuit);
    return planned;
  });
  const lookAlikes = (request.lookAlikes ?? []).map((what) => {
    const planned = planLookAlike(
      what,
      parameters,
      days,
      random.branch(`look-alike ${what}`),
      busy,
      request.lookAlikeDay,
    );
    for (const { id } of planned.circuits) if (planned.circuits.length === 1) busy.add(id);
    return planned;
  });
  const plans = [...faults, ...lookAlikes];
  const lived = runStore(parameters, {
    seed: request.seed,
    startMs,
    days,
    weather: Object.assign({}, ...lookAlikes.map(({ weather }) => weather)),
    circuits: byId(plans.flatMap(({ circuits }) => circuits)),
    groups: byId(plans.flatMap(({ groups }) => groups)),
    truth: truthOf({ simulator: 'section-model', seed: request.seed, startMs }, faults, lookAlikes),
  });
  return asLogged(lived, faults, request, random);
}

function byId<T>(entries: readonly { readonly id: string; readonly disturb: T }[]): Map<string, T[]> {
  const map = new Map<string, T[]>();
  for (const { id, disturb } of entries) map.set(id, [...(map.get(id) ?? []), disturb]);
  return map;
}
