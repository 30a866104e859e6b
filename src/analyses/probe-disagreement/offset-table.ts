import { selectQuantile } from '../../maths/select-rank.ts';
import { samplesIn } from '../../model/grid.ts';
import { type CircuitSignals, Phase } from '../../signals/types.ts';
import type { Kelvin } from '../../units/quantities.ts';
import { limitsOf, negated, type OffsetLimits, turned } from './offset-limits.ts';

export const blockMinutes = 30;
export const blocksPerHour = 60 / blockMinutes;

/** Offsets between the probes of one circuit in half-hour medians of settled air, each computed once. */
export interface OffsetTable {
  readonly samplesPerBlock: number;
  readonly blocks: number;
  /**
   * Probe minus the median of its neighbours, one value a half hour; NaN where too few settled samples are known. Shared:
   * not to be written to.
   */
  offset(probe: number, peers: readonly number[]): Float64Array;
  /** No two half hours of `offset` lie further apart, K: told without working out a median. −∞ where none is known. */
  mostApart(probe: number, peers: readonly number[]): Kelvin;
}

/** Share of a half hour that both probes must hold settled. */
const leastKnown = 0.3;

/** @param withStops whether the air of a circuit that stands shut counts too */
export function offsetTable(signals: CircuitSignals, withStops = false): OffsetTable {
  const { count } = signals.log.grid;
  const samplesPerBlock = samplesIn(signals.log.grid, blockMinutes);
  const blocks = Math.ceil(count / samplesPerBlock);
  const least = Math.max(1, samplesPerBlock * leastKnown);
  const known = new Map<string, Float64Array>();
  const limits = new Map<string, OffsetLimits>();
  const apart = new Map<string, Kelvin>();
  const records = signals.circuit.probes.map((probe) => probe.record.values);
  const { phase } = signals;
  const shutToo = withStops ? Phase.off : Phase.cooling;
  const endOf = (block: number): number => Math.min(count, (block + 1) * samplesPerBlock);
  const pair = (probe: number, peer: number): Float64Array => {
    const [a, b] = [records[probe]!, records[peer]!];
    const forth = new Float64Array(blocks).fill(Number.NaN);
    const kept = new Float64Array(samplesPerBlock);
    for (let block = 0; block < blocks; block++) {
      const from = block * samplesPerBlock;
      const size = keepDifferences(a, b, phase, shutToo, from, endOf(block), kept);
      if (size >= least) forth[block] = selectQuantile(kept, 0.5, size);
    }
    known.set(`${peer} ${probe}`, negated(forth));
    return forth;
  };
  const offset = (probe: number, peers: readonly number[]): Float64Array => {
    const key = `${probe} ${peers.join(' ')}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    const made =
      peers.length === 1
        ? pair(probe, peers[0]!)
        : middleOf(
            peers.map((peer) => offset(probe, [peer])),
            blocks,
          );
    known.set(key, made);
    return made;
  };
  const pairLimits = (probe: number, peer: number): OffsetLimits => {
    const found = limits.get(`${probe} ${peer}`);
    if (found !== undefined) return found;
    const [a, b] = [records[probe]!, records[peer]!];
    const made = limitsOf(blocks, (block, sums) => {
      const size = sumDifferences(a, b, phase, shutToo, block * samplesPerBlock, endOf(block), sums);
      return size >= least ? size : 0;
    });
    limits.set(`${probe} ${peer}`, made);
    limits.set(`${peer} ${probe}`, turned(made));
    return made;
  };
  const mostApart = (probe: number, peers: readonly number[]): Kelvin => {
    const key = `${probe} ${peers.join(' ')}`;
    const found = apart.get(key);
    if (found !== undefined) return found;
    const pairs = peers.map((peer) => pairLimits(probe, peer));
    // A middle of several is no less than that of what is no more than each of them.
    const low = middleOf(
      pairs.map((one) => one.low),
      blocks,
    );
    const high = middleOf(
      pairs.map((one) => one.high),
      blocks,
    );
    const made = largest(high) - smallest(low);
    apart.set(key, made);
    return made;
  };
  return { samplesPerBlock, blocks, offset, mostApart };
}

/** Writes the known differences at samples that cool, or are in the phase `other`, to `into`, and says how many there are. */
function keepDifferences(
  a: Float64Array,
  b: Float64Array,
  phase: Uint8Array,
  other: number,
  from: number,
  to: number,
  into: Float64Array,
): number {
  let count = 0;
  for (let i = from; i < to; i++) {
    if (phase[i] !== Phase.cooling && phase[i] !== other) continue;
    const apart = a[i]! - b[i]!;
    if (!Number.isNaN(apart)) into[count++] = apart;
  }
  return count;
}

/** The same differences, only their sum and that of their squares. */
function sumDifferences(
  a: Float64Array,
  b: Float64Array,
  phase: Uint8Array,
  other: number,
  from: number,
  to: number,
  sums: Float64Array,
): number {
  let count = 0;
  let sum = 0;
  let squares = 0;
  for (let i = from; i < to; i++) {
    if (phase[i] !== Phase.cooling && phase[i] !== other) continue;
    const apart = a[i]! - b[i]!;
    if (Number.isNaN(apart)) continue;
    count++;
    sum += apart;
    squares += apart * apart;
  }
  sums[0] = sum;
  sums[1] = squares;
  return count;
}

function largest(values: Float64Array): number {
  let most = Number.NEGATIVE_INFINITY;
  for (const value of values) if (value > most) most = value;
  return most;
}

function smallest(values: Float64Array): number {
  let least = Number.POSITIVE_INFINITY;
  for (const value of values) if (value < least) least = value;
  return least;
}

function middleOf(series: readonly Float64Array[], length: number): Float64Array {
  if (series.length === 1) return series[0]!;
  const middle = new Float64Array(length);
  const [first, second] = series;
  // The two neighbours of a probe on the usual line-up of three.
  if (series.length === 2) meanOfTwo(first!, second!, middle);
  else medianOfMany(series, middle);
  return middle;
}

function meanOfTwo(first: Float64Array, second: Float64Array, mean: Float64Array): void {
  for (let i = 0; i < mean.length; i++) {
    const a = first[i]!;
    const b = second[i]!;
    mean[i] = Number.isNaN(a) ? b : Number.isNaN(b) ? a : a + 0.5 * (b - a);
  }
}

function medianOfMany(series: readonly Float64Array[], middle: Float64Array): void {
  const scratch = new Float64Array(series.length);
  for (let i = 0; i < middle.length; i++) {
    let count = 0;
    for (const values of series) if (!Number.isNaN(values[i]!)) scratch[count++] = values[i]!;
    middle[i] = selectQuantile(scratch, 0.5, count);
  }
}
