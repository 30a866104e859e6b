import type { Channel } from './log-edits.ts';
import type { LookAlike, PlantedFault, Truth } from './simulated-store.ts';

/** What both simulators plan of a fault; onset and end in minutes since the start of the log, sizes as planned. */
export interface PlannedTruth {
  readonly truth: Omit<PlantedFault, 'reachedThree'>;
  /** The channel that its probe is exchanged with, or null. */
  readonly swappedWith: Channel | null;
}

/** The truth of a store as it was planned, times on the clock. */
export function truthOf(
  { simulator, seed, startMs }: Pick<Truth, 'simulator' | 'seed'> & { readonly startMs: number },
  faults: readonly PlannedTruth[],
  lookAlikes: readonly { readonly truth: LookAlike }[],
): Truth {
  const at = (minute: number): number => startMs + minute * 60_000;
  return {
    simulator,
    seed,
    faults: faults
      .flatMap(bothEnds)
      .map((truth) => ({ ...truth, onset: at(truth.onset), reachedThree: null })),
    lookAlikes: lookAlikes.map(({ truth }) => ({
      ...truth,
      from: at(truth.from),
      to: truth.to === null ? null : at(truth.to),
    })),
  };
}

/** A swap strikes two circuits: the truth has an entry for each. */
function bothEnds({ truth, swappedWith }: PlannedTruth): PlannedTruth['truth'][] {
  return swappedWith === null
    ? [truth]
    : [truth, { ...truth, circuit: swappedWith.circuit, probe: swappedWith.place }];
}
