import { simulateSections } from './section-model/simulate.ts';
import type { SimulatedStore } from './simulated-store.ts';
import type { StoreRequest } from './store-request.ts';

/** Small stores with one thing planted each, for the tests of signals, analyses and diagnosis. */
const requests = {
  healthy: {},
  'iced-end': { faults: [{ fault: 'iced-end', circuit: 'M01', place: 0, onsetDay: 8, size: 6 }] },
  'probe-step': { faults: [{ fault: 'probe-step', circuit: 'M01', place: 1, onsetDay: 9.5, size: 5 }] },
  'probe-creep': { faults: [{ fault: 'probe-creep', circuit: 'M01', place: 2, onsetDay: 8, size: 6 }] },
  'suction-rise': { faults: [{ fault: 'suction-rise', onsetDay: 12.5 }] },
} as const satisfies { [name: string]: Pick<StoreRequest, 'faults'> };
export type ExampleName = keyof typeof requests;
export const exampleNames = Object.keys(requests) as ExampleName[];

/** `M01` has three probes steered on their average, off-cycle defrosts and an on/off valve. */
export function exampleStore(name: ExampleName, options: Partial<StoreRequest> = {}): SimulatedStore {
  return simulateSections({
    seed: 11,
    mediumCircuits: 4,
    lowCircuits: 1,
    days: 24,
    first: { sections: 3, controls: 'average', valve: 'on-off', defrostKind: 'off-cycle' },
    ...requests[name],
    ...options,
  });
}
