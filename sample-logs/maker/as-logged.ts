import { drawGap, withGap, withSwappedProbes, withUnconnectedChannel } from './log-edits.ts';
import { withMeasuredFaults } from './measure-faults.ts';
import type { Random } from './random.ts';
import type { SimulatedStore } from './simulated-store.ts';
import type { StoreRequest } from './store-request.ts';
import type { PlannedTruth } from './truth-of.ts';

/** A history as the plant lived it, its faults measured, then with all that wiring and logger do to it. */
export function asLogged(
  lived: SimulatedStore,
  faults: readonly PlannedTruth[],
  { lookAlikes = [] }: StoreRequest,
  random: Random,
): SimulatedStore {
  let store = withMeasuredFaults(lived);
  for (const { swappedWith, truth } of faults) {
    if (swappedWith === null) continue;
    const own = { circuit: truth.circuit!, place: truth.probe! };
    store = withSwappedProbes(store, [own, swappedWith], truth.onset);
  }
  if (lookAlikes.includes('long-gap')) store = withGap(store, ...drawGap(store, random.branch('gap')));
  if (lookAlikes.includes('not-connected')) store = withUnconnectedChannel(store);
  return store;
}
