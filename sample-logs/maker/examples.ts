import { type FaultName, faultNames } from './fault-catalogue.ts';
import { simulateLumped } from './lumped-model/simulate.ts';
import { simulateSections } from './section-model/simulate.ts';
import type { SimulatedStore } from './simulated-store.ts';
import type { FaultRequest, StoreRequest } from './store-request.ts';

/** `healthy`, or the one fault that is planted. */
export type ExampleName = 'healthy' | FaultName;
export const exampleNames: readonly ExampleName[] = ['healthy', ...faultNames];

/** Where the example is looked at closely, the fault strikes `M01`. */
const strikes: { readonly [name in ExampleName]?: Omit<FaultRequest, 'fault'> } = {
  'iced-end': { on: 'M01', place: 0, onsetDay: 8, size: 6 },
  'probe-step': { on: 'M01', place: 1, onsetDay: 9.5, size: 5 },
  'probe-creep': { on: 'M01', place: 2, onsetDay: 8, size: 6 },
  'suction-rise': { onsetDay: 12.5 },
};

export interface ExampleOptions extends Partial<StoreRequest> {
  /** `one` is the section model, `two` the lumped model. */
  readonly simulator?: 'one' | 'two';
}

/**
 * A small store with one thing planted, for the tests of signals, analyses and diagnosis. `M01` has three probes
 * steered on their average, off-cycle defrosts and an on/off valve.
 */
export function exampleStore(name: ExampleName, options: ExampleOptions = {}): SimulatedStore {
  const { simulator = 'one', ...request } = options;
  const simulate = simulator === 'one' ? simulateSections : simulateLumped;
  return simulate({
    seed: 11,
    mediumCircuits: 4,
    lowCircuits: 1,
    days: 24,
    first: { sections: 3, controls: 'average', valve: 'on-off', defrostKind: 'off-cycle' },
    faults: name === 'healthy' ? [] : [{ fault: name, ...strikes[name] }],
    ...request,
  });
}
