import { type PooledParts, pooledParts } from '../maths/pooled-parts.ts';
import type { Record } from '../model/record.ts';
import { type CircuitSignals, Phase } from '../signals/types.ts';
import { blocksADay } from './clock-blocks.ts';

/** The readings of a record, one part a clock block of the calendar. */
export type BlockReadings = PooledParts;

/** @param places clock block of each sample, −1 of those left out */
export function blockReadings(
  { values, resolution }: Record,
  places: Int32Array,
  blockCount: number,
): BlockReadings {
  const partOf = Int32Array.from({ length: blockCount }, (_, block) => block);
  return pooledParts([{ values, places, partOf }], blockCount, resolution);
}

/** Settled air of every probe. */
export function settledReadings(
  { circuit, phase, log }: CircuitSignals,
  blocks: Int32Array,
): BlockReadings[] {
  const blockCount = log.calendar.days.length * blocksADay;
  const places = inSettledAir(blocks.slice(), phase);
  return circuit.probes.map(({ record }) => blockReadings(record, places, blockCount));
}

/** Changes `blocks` in place: −1 outside settled air. */
function inSettledAir(blocks: Int32Array, phase: Uint8Array): Int32Array {
  for (let i = 0; i < blocks.length; i++) if (phase[i] !== Phase.cooling) blocks[i] = -1;
  return blocks;
}

/** Type 7 median of each block; NaN of those with fewer readings than `least`. */
export function blockMedians(readings: BlockReadings, blockCount: number, least: number): Float64Array {
  return Float64Array.from({ length: blockCount }, (_, block) =>
    readings.count(block) < least ? Number.NaN : readings.quantiles([block], [0.5])[0]!,
  );
}
