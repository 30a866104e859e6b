import { median } from '../../maths/median.ts';
import { samplesIn } from '../../model/grid.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { settings } from './settings.ts';

/** A stretch in which one probe read the same number while its neighbours lived. Samples, half open. */
export interface Motionless {
  readonly from: number;
  readonly to: number;
  readonly value: number;
  /** Distance from what the probe itself read before, where it read; else from the nearest neighbour, K. */
  readonly distance: number;
}

/** How far the neighbours must have moved meanwhile, K: a defrost or plain cycling does it. */
const neighboursMoved = 2;
/** Cycling in steps as coarse as the cycle itself can look flat: so many steps of the logger must have passed. */
const stepsPassed = 3;

/** The longest motionless stretch of the probe, or null. The neighbours are the test: they must have moved. */
export function motionless(
  signals: CircuitSignals,
  probe: number,
  peers: readonly number[],
): Motionless | null {
  const { values, resolution } = signals.circuit.probes[probe]!.record;
  const least = samplesIn(signals.log.grid, settings.stuckHours.value * 60);
  let best: { from: number; to: number } | null = null;
  let from = -1;
  let last = -1;
  const close = (): void => {
    if (from < 0 || last + 1 - from < least) return;
    if (best === null || last + 1 - from > best.to - best.from) best = { from, to: last + 1 };
  };
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (Number.isNaN(value)) continue;
    if (from >= 0 && value === values[from]) {
      last = i;
      continue;
    }
    close();
    from = i;
    last = i;
  }
  close();
  const found = best as { from: number; to: number } | null;
  if (found === null) return null;
  const others = peers.map((peer) =>
    signals.circuit.probes[peer]!.record.values.subarray(found.from, found.to),
  );
  const least2 = Math.max(neighboursMoved, stepsPassed * resolution);
  if (!others.some((other) => rangeOf(other) >= least2)) return null;
  const value = values[found.from]!;
  const before = median(
    values.subarray(Math.max(0, found.from - samplesIn(signals.log.grid, 1440)), found.from),
  );
  const distance = Number.isNaN(before) ? distanceFrom(others, value) : Math.abs(value - before);
  return { ...found, value, distance };
}

function rangeOf(values: Float64Array): number {
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (value < lowest) lowest = value;
    if (value > highest) highest = value;
  }
  return highest - lowest;
}

/** Smallest over the neighbours of the mean distance to `value`. */
function distanceFrom(others: readonly Float64Array[], value: number): number {
  let nearest = Number.POSITIVE_INFINITY;
  for (const other of others) {
    let sum = 0;
    let known = 0;
    for (const reading of other) {
      if (Number.isNaN(reading)) continue;
      sum += Math.abs(reading - value);
      known++;
    }
    if (known > 0) nearest = Math.min(nearest, sum / known);
  }
  return nearest;
}
