import type { PlantedFault } from '../../sample-logs/maker/simulated-store.ts';
import type { Diagnosis } from '../../src/model/finding.ts';
import { findingFor } from './match.ts';

const quarterDay = 6 * 3_600_000;

/**
 * When a fault that is found at the end was first found, to a quarter day: halving between its onset and the end,
 * each time with nothing later than the cut. Assumes that what is found stays found.
 */
export function firstFlagged(
  fault: PlantedFault,
  endMs: number,
  diagnoseUntil: (untilMs: number) => Diagnosis,
): number {
  let missed = fault.onset;
  let found = endMs;
  while (found - missed > quarterDay) {
    const middle = (missed + found) / 2;
    if (findingFor(diagnoseUntil(middle).findings, fault) !== null) found = middle;
    else missed = middle;
  }
  return found;
}
