import { countedQuantiles } from '../maths/counted-quantiles.ts';
import { selectQuantiles } from '../maths/select-rank.ts';
import { stepsWithin } from '../maths/step-counts.ts';

/** Values of a history, each with the clock block (of the whole calendar) that it belongs to. */
export interface Placed {
  readonly values: Float64Array;
  /** −1 leaves a value out. */
  readonly blocks: Int32Array;
  /** Step in which the values were logged; 0 where none is known. */
  readonly resolution: number;
}

/** Values parted by the block of the day and the day type, to be pooled again in many ways. */
export interface NormPools {
  /** Type 7, for ascending `shares`, of the values of these parts together; NaN for none. */
  quantiles(parts: readonly number[], shares: readonly number[]): number[];
}

/** Room to sort the values in; one for all figures of a log. */
export interface NormRoom {
  readonly parted: Float64Array;
  readonly pooled: Float64Array;
}

export function normRoom(mostValues: number): NormRoom {
  return { parted: new Float64Array(mostValues), pooled: new Float64Array(mostValues) };
}

/**
 * Counts of each logged step in each part, where the values stand on steps; null where they do not. Pooling parts is
 * then adding up counts.
 *
 * @param partOf part of each clock block
 */
export function countedPools(
  { values, blocks, resolution }: Placed,
  partOf: Int32Array,
  parts: number,
): NormPools | null {
  const { low, high } = rangeOf(values, blocks);
  const steps = stepsWithin(low, high, resolution);
  if (steps === 0) return null;
  const shown = new Float64Array(steps).fill(Number.NaN);
  const counts = new Int32Array(parts * steps);
  if (!countSteps(values, blocks, partOf, { low, perStep: 1 / resolution, shown, counts })) return null;
  const pooled = new Int32Array(steps);
  return {
    quantiles(chosen, shares) {
      pooled.fill(0);
      for (const part of chosen) addCounts(pooled, counts, part * steps);
      return countedQuantiles(shown, pooled, shares);
    },
  };
}

interface Steps {
  readonly low: number;
  readonly perStep: number;
  /** The value that a step shows. */
  readonly shown: Float64Array;
  readonly counts: Int32Array;
}

/** False where two different values fall on one step. */
function countSteps(
  values: Float64Array,
  blocks: Int32Array,
  partOf: Int32Array,
  { low, perStep, shown, counts }: Steps,
): boolean {
  for (let i = 0; i < values.length; i++) {
    const block = blocks[i]!;
    const value = values[i]!;
    if (block < 0 || Number.isNaN(value)) continue;
    const step = Math.floor((value - low) * perStep + 0.5);
    if (shown[step] !== value) {
      if (!Number.isNaN(shown[step]!)) return false;
      shown[step] = value;
    }
    counts[partOf[block]! * shown.length + step]!++;
  }
  return true;
}

function rangeOf(values: Float64Array, blocks: Int32Array): { low: number; high: number } {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (blocks[i]! < 0) continue;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return { low, high };
}

function addCounts(pooled: Int32Array, counts: Int32Array, from: number): void {
  for (let k = 0; k < pooled.length; k++) pooled[k]! += counts[from + k]!;
}

/** The same of any values, by selection. */
export function selectedPools(
  { values, blocks }: Placed,
  partOf: Int32Array,
  parts: number,
  room: NormRoom,
): NormPools {
  const starts = new Int32Array(parts + 1);
  for (let i = 0; i < values.length; i++) {
    if (isIn(values, blocks, i)) starts[partOf[blocks[i]!]! + 1]!++;
  }
  for (let part = 0; part < parts; part++) starts[part + 1]! += starts[part]!;
  const ends = starts.slice(0, parts);
  for (let i = 0; i < values.length; i++) {
    if (isIn(values, blocks, i)) room.parted[ends[partOf[blocks[i]!]!]!++] = values[i]!;
  }
  return {
    quantiles(chosen, shares) {
      let count = 0;
      for (const part of chosen) {
        room.pooled.set(room.parted.subarray(starts[part]!, ends[part]!), count);
        count += ends[part]! - starts[part]!;
      }
      return selectQuantiles(room.pooled, shares, count);
    },
  };
}

function isIn(values: Float64Array, blocks: Int32Array, i: number): boolean {
  return blocks[i]! >= 0 && !Number.isNaN(values[i]!);
}
