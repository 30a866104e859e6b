import { median } from '../../maths/median.ts';
import { samplesIn } from '../../model/grid.ts';
import { type CircuitSignals, Phase } from '../../signals/types.ts';

/** Offset of one probe against the median of its neighbours, in short equal blocks of settled air. */
export interface OffsetBlocks {
  readonly samplesPerBlock: number;
  /** One value a block of the grid, NaN where too few settled samples are known. */
  readonly values: Float64Array;
}

export function offsetBlocks(
  signals: CircuitSignals,
  probe: number,
  peers: readonly number[],
  minutes: number,
): OffsetBlocks {
  const { grid } = signals.log;
  const samplesPerBlock = samplesIn(grid, minutes);
  const offsets = sampleOffsets(signals, probe, peers, 0, grid.count);
  const blocks = Math.ceil(grid.count / samplesPerBlock);
  const values = new Float64Array(blocks).fill(Number.NaN);
  for (let block = 0; block < blocks; block++) {
    const part = offsets.subarray(block * samplesPerBlock, (block + 1) * samplesPerBlock);
    let known = 0;
    for (const offset of part) if (Number.isFinite(offset)) known++;
    if (known >= Math.max(1, samplesPerBlock * 0.3)) values[block] = median(part);
  }
  return { samplesPerBlock, values };
}

/** Probe minus the median of its neighbours at each settled sample of `from` to `to`, else NaN. */
export function sampleOffsets(
  signals: CircuitSignals,
  probe: number,
  peers: readonly number[],
  from: number,
  to: number,
): Float64Array {
  const own = signals.circuit.probes[probe]!.record.values;
  const others = peers.map((peer) => signals.circuit.probes[peer]!.record.values);
  const offsets = new Float64Array(to - from).fill(Number.NaN);
  for (let i = from; i < to; i++) {
    if (signals.phase[i] !== Phase.cooling) continue;
    offsets[i - from] = own[i]! - middleOf(others, i);
  }
  return offsets;
}

function middleOf(records: readonly Float64Array[], index: number): number {
  if (records.length === 1) return records[0]![index]!;
  if (records.length === 2) return (records[0]![index]! + records[1]![index]!) / 2;
  return median(records.map((values) => values[index]!));
}
