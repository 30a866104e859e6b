import { type PooledParts, pooledParts } from '../maths/pooled-parts.ts';
import type { Record } from '../model/record.ts';
import { type CircuitSignals, Phase } from '../signals/types.ts';
import type { ClockBlocks } from './clock-blocks.ts';

/** The readings of a record, one part a clock block of the calendar. */
export type BlockReadings = PooledParts;

export function blockReadings({ values, resolution }: Record, { of, count }: ClockBlocks): BlockReadings {
  return pooledParts([{ values, places: of, partOf: partsFrom(0, count) }], count, resolution);
}

/** The settled air of a circuit, each reading counted once. */
export interface SettledReadings {
  /** Parts of all probes: the blocks of the first, of the second, … */
  readonly all: PooledParts;
  /** One a probe. */
  readonly probes: readonly BlockReadings[];
}

export function settledReadings({ circuit, phase }: CircuitSignals, blocks: ClockBlocks): SettledReadings {
  const { count } = blocks;
  const places = inSettledAir(blocks.of.slice(), phase);
  const series = circuit.probes.map(({ record }, k) => ({
    values: record.values,
    places,
    partOf: partsFrom(k * count, count),
  }));
  const resolutions = new Set(circuit.probes.map(({ record }) => record.resolution));
  const [resolution] = resolutions.size === 1 ? resolutions : [0];
  const all = pooledParts(series, series.length * count, resolution!);
  return { all, probes: series.map((_, k) => all.slice(k * count, (k + 1) * count)) };
}

function partsFrom(first: number, count: number): Int32Array {
  return Int32Array.from({ length: count }, (_, k) => first + k);
}

/** Changes `places` in place: −1 outside settled air. */
function inSettledAir(places: Int32Array, phase: Uint8Array): Int32Array {
  for (let i = 0; i < places.length; i++) if (phase[i] !== Phase.cooling) places[i] = -1;
  return places;
}

/** Type 7 median of each block; NaN of those with fewer readings than `least`. */
export function blockMedians(readings: BlockReadings, blockCount: number, least: number): Float64Array {
  return Float64Array.from({ length: blockCount }, (_, block) =>
    readings.count(block) < least ? Number.NaN : readings.quantiles([block], [0.5])[0]!,
  );
}
