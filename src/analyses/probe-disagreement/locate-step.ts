import type { CircuitSignals } from '../../signals/types.ts';
import type { OffsetTable } from './offset-table.ts';
import { sampleOffsets } from './sample-offsets.ts';

/**
 * The sample at which the offset of a probe went from one level to the other, between two samples that are
 * known to lie before and after it: first over half-hour medians, then over the samples of the neighbouring
 * blocks. Least absolute deviation from the two known levels.
 */
export function locateStep(
  signals: CircuitSignals,
  table: OffsetTable,
  probe: number,
  peers: readonly number[],
  span: { readonly from: number; readonly to: number },
  levels: { readonly before: number; readonly after: number },
): number {
  const { samplesPerBlock } = table;
  const values = table.offset(probe, peers);
  const firstBlock = Math.floor(span.from / samplesPerBlock);
  const lastBlock = Math.min(values.length, Math.ceil(span.to / samplesPerBlock));
  const block = firstBlock + bestCut(values.subarray(firstBlock, lastBlock), levels);
  const from = Math.max(span.from, (block - 2) * samplesPerBlock);
  const to = Math.min(span.to, (block + 2) * samplesPerBlock);
  if (to <= from) return Math.max(span.from, Math.min(span.to, block * samplesPerBlock));
  return from + bestCut(sampleOffsets(signals, probe, peers, from, to), levels);
}

/** First position of the second level: the cut with the least sum of absolute deviations. */
function bestCut(values: Float64Array, levels: { before: number; after: number }): number {
  let cost = 0;
  for (const value of values) if (Number.isFinite(value)) cost += Math.abs(value - levels.after);
  let best = cost;
  let earliest = 0;
  let latest = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (Number.isFinite(value)) cost += Math.abs(value - levels.before) - Math.abs(value - levels.after);
    if (cost < best) {
      best = cost;
      earliest = i + 1;
      latest = i + 1;
    } else if (cost === best && latest === i) {
      latest = i + 1;
    }
  }
  // Unknown samples (a defrost) between the two levels leave a range of equal cuts: take its middle.
  return (earliest + latest) >> 1;
}
