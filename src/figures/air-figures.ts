import { selectQuantile, selectQuantiles } from '../maths/select-rank.ts';
import { samplesIn } from '../model/grid.ts';
import { type Target, targetAt } from '../model/record.ts';
import type { CircuitSignals } from '../signals/types.ts';
import { Phase } from '../signals/types.ts';
import { type BlockReadings, blockMedians } from './block-readings.ts';
import type { ClockBlocks } from './clock-blocks.ts';
import type { Figure } from './figure.ts';

/** A block needs this much settled air to speak for itself. */
export const leastBlockMinutes = 30;

/**
 * Level, spread and swing of a circuit, air and offset of each usable probe, block by block.
 *
 * @param readings settled air of all probes
 */
export function airFigures(
  { circuit, usable, phase, log }: CircuitSignals,
  blocks: ClockBlocks,
  readings: readonly BlockReadings[],
): Figure[] {
  const probes = circuit.probes.filter((_, i) => usable[i]);
  if (probes.length === 0) return [];
  const least = samplesIn(log.grid, leastBlockMinutes);
  const room = airRoom(Math.max(...blocks.runs.map(({ from, to }) => to - from)), probes.length);
  const empty = () => new Float64Array(blocks.count).fill(Number.NaN);
  const figures = { level: empty(), spread: empty(), swing: empty() };
  const offsets = probes.map(empty);
  const air = readings.filter((_, i) => usable[i]).map((own) => blockMedians(own, blocks.count, least));
  const values = probes.map(({ record }) => record.values);
  const { setPoint } = circuit;
  const isFixed = setPoint === null || typeof setPoint === 'number';

  for (const { block, from, to } of blocks.runs) {
    const count = gatherRows(values, phase, from, to, room);
    if (count < least) continue;
    const middle = (series: Float64Array): number => middleOfKnown(series, count, least, room.scratch);
    circuitRows(room, count);
    figures.spread[block] = middle(room.spread);
    const { low, median, high } = rangeOfKnown(room.mean, count, least, room.scratch);
    figures.swing[block] = high - low;
    figures.level[block] = isFixed
      ? median - targetAt(setPoint, from)
      : middle(distances(room, setPoint, count));
    for (let k = 0; k < probes.length; k++) {
      offsetRows(room, k, count);
      offsets[k]![block] = middle(room.apart);
    }
  }

  return [
    { id: 'level', point: null, unit: 'K', values: figures.level },
    { id: 'spread', point: null, unit: 'K', values: figures.spread },
    { id: 'swing', point: null, unit: 'K', values: figures.swing },
    ...probes.flatMap(({ point }, k): Figure[] => [
      { id: 'air', point, unit: 'Cel', values: air[k]! },
      { id: 'offset', point, unit: 'K', values: offsets[k]! },
    ]),
  ];
}

/** Room for the settled samples of one block, a row each. */
interface AirRoom {
  readonly samples: Int32Array;
  /** One series a probe. */
  readonly rows: readonly Float64Array[];
  readonly mean: Float64Array;
  readonly spread: Float64Array;
  readonly apart: Float64Array;
  readonly scratch: Float64Array;
}

function airRoom(mostSamples: number, probes: number): AirRoom {
  const series = () => new Float64Array(mostSamples);
  return {
    samples: new Int32Array(mostSamples),
    rows: Array.from({ length: probes }, series),
    mean: series(),
    spread: series(),
    apart: series(),
    scratch: series(),
  };
}

/** Gives how many samples of the block are settled. */
function gatherRows(
  values: readonly Float64Array[],
  phase: Uint8Array,
  from: number,
  to: number,
  { samples, rows }: AirRoom,
): number {
  let count = 0;
  for (let i = from; i < to; i++) if (phase[i] === Phase.cooling) samples[count++] = i;
  for (const [k, series] of values.entries()) pick(series, samples, count, rows[k]!);
  return count;
}

function pick(series: Float64Array, samples: Int32Array, count: number, row: Float64Array): void {
  for (let j = 0; j < count; j++) row[j] = series[samples[j]!]!;
}

/** Mean of the known probes, and how far the warmest stands from the coldest where two or more are known. */
function circuitRows(room: AirRoom, count: number): void {
  const [a, b, c] = room.rows;
  if (room.rows.length === 3) threeProbeRows(a!, b!, c!, room, count);
  else for (let j = 0; j < count; j++) circuitRow(room, j);
}

/** The largest of three differences is half of the sum of all: no branch hangs on which probe is the warmest. */
function threeProbeRows(
  a: Float64Array,
  b: Float64Array,
  c: Float64Array,
  room: AirRoom,
  count: number,
): void {
  const { mean, spread } = room;
  for (let j = 0; j < count; j++) {
    const x = a[j]!;
    const y = b[j]!;
    const z = c[j]!;
    mean[j] = (x + y + z) / 3;
    spread[j] = (Math.abs(x - y) + Math.abs(y - z) + Math.abs(x - z)) / 2;
  }
  for (let j = 0; j < count; j++) if (Number.isNaN(mean[j]!)) circuitRow(room, j);
}

function circuitRow({ rows, mean, spread }: AirRoom, j: number): void {
  let sum = 0;
  let known = 0;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < rows.length; k++) {
    const value = rows[k]![j]!;
    if (Number.isNaN(value)) continue;
    sum += value;
    known++;
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  mean[j] = sum / known;
  spread[j] = known < 2 ? Number.NaN : high - low;
}

/** The mean of each row less the set point of its sample. */
function distances({ samples, mean, apart }: AirRoom, setPoint: Target | null, count: number): Float64Array {
  for (let j = 0; j < count; j++) apart[j] = mean[j]! - targetAt(setPoint, samples[j]!);
  return apart;
}

/** Probe `k` less the median of the other known ones. */
function offsetRows({ rows, apart, scratch }: AirRoom, k: number, count: number): void {
  const own = rows[k]!;
  const others = rows.filter((_, other) => other !== k);
  const [a, b] = others;
  if (others.length === 2) {
    for (let j = 0; j < count; j++) apart[j] = own[j]! - middleOfTwo(a![j]!, b![j]!);
    return;
  }
  for (let j = 0; j < count; j++) {
    let known = 0;
    for (const other of others) if (!Number.isNaN(other[j]!)) scratch[known++] = other[j]!;
    apart[j] = own[j]! - selectQuantile(scratch, 0.5, known);
  }
}

function middleOfTwo(a: number, b: number): number {
  return Number.isNaN(a) ? b : Number.isNaN(b) ? a : (a + b) / 2;
}

/** Copies the known ones of the first `count` values; gives how many they are. */
function known(series: Float64Array, count: number, into: Float64Array): number {
  let found = 0;
  for (let j = 0; j < count; j++) if (!Number.isNaN(series[j]!)) into[found++] = series[j]!;
  return found;
}

/** Type 7 median of the known ones of the first `count` values; NaN where they are fewer than `least`. */
function middleOfKnown(series: Float64Array, count: number, least: number, scratch: Float64Array): number {
  const found = known(series, count, scratch);
  return found < least ? Number.NaN : selectQuantile(scratch, 0.5, found);
}

/** Type 7 p10, median and p90 of the same. */
function rangeOfKnown(series: Float64Array, count: number, least: number, scratch: Float64Array) {
  const found = known(series, count, scratch);
  if (found < least) return { low: Number.NaN, median: Number.NaN, high: Number.NaN };
  const [low, median, high] = selectQuantiles(scratch, [0.1, 0.5, 0.9], found);
  return { low: low!, median: median!, high: high! };
}
