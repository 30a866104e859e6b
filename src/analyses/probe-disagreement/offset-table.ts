import { selectQuantile } from '../../maths/select-rank.ts';
import { samplesIn } from '../../model/grid.ts';
import { type CircuitSignals, Phase } from '../../signals/types.ts';

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
}

/** Share of a half hour that both probes must hold settled. */
const leastKnown = 0.3;

/** @param withStops whether the air of a circuit that stands shut counts too */
export function offsetTable(signals: CircuitSignals, withStops = false): OffsetTable {
  const samplesPerBlock = samplesIn(signals.log.grid, blockMinutes);
  const blocks = Math.ceil(signals.log.grid.count / samplesPerBlock);
  const known = new Map<string, Float64Array>();
  const pair = (probe: number, peer: number): Float64Array => {
    const forth = pairBlocks(signals, probe, peer, samplesPerBlock, blocks, withStops);
    known.set(
      `${peer} ${probe}`,
      forth.map((value) => -value),
    );
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
  return { samplesPerBlock, blocks, offset };
}

function pairBlocks(
  signals: CircuitSignals,
  probe: number,
  peer: number,
  samplesPerBlock: number,
  blocks: number,
  withStops: boolean,
): Float64Array {
  const a = signals.circuit.probes[probe]!.record.values;
  const b = signals.circuit.probes[peer]!.record.values;
  const { phase } = signals;
  const result = new Float64Array(blocks).fill(Number.NaN);
  const scratch = new Float64Array(samplesPerBlock);
  for (let block = 0; block < blocks; block++) {
    const end = Math.min(a.length, (block + 1) * samplesPerBlock);
    let count = 0;
    for (let i = block * samplesPerBlock; i < end; i++) {
      if (phase[i] !== Phase.cooling && !(withStops && phase[i] === Phase.off)) continue;
      const apart = a[i]! - b[i]!;
      if (!Number.isNaN(apart)) scratch[count++] = apart;
    }
    if (count >= Math.max(1, samplesPerBlock * leastKnown))
      result[block] = selectQuantile(scratch, 0.5, count);
  }
  return result;
}

function middleOf(series: readonly Float64Array[], length: number): Float64Array {
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
