import { samplesIn } from '../model/grid.ts';
import { targetAt } from '../model/record.ts';
import type { CircuitSignals } from '../signals/types.ts';
import { Phase } from '../signals/types.ts';
import { BlockSamples } from './block-samples.ts';
import { blocksADay } from './clock-blocks.ts';
import type { Figure } from './figure.ts';

/** A block needs this much settled air to speak for itself. */
export const leastBlockMinutes = 30;

/** Level, spread and swing of a circuit, air and offset of each usable probe: one pass over the samples. */
export function airFigures({ circuit, usable, phase, log }: CircuitSignals, blocks: Int32Array): Figure[] {
  const probes = circuit.probes.filter((_, i) => usable[i]);
  if (probes.length === 0) return [];
  const length = log.calendar.days.length * blocksADay;
  const least = samplesIn(log.grid, leastBlockMinutes);
  const collect = () => new BlockSamples(log.grid);
  const empty = () => new Float64Array(length).fill(Number.NaN);
  const samples = { level: collect(), mean: collect(), spread: collect() };
  const each = probes.map(() => ({ air: collect(), offset: collect() }));
  const figures = { level: empty(), spread: empty(), swing: empty() };
  const own = probes.map(() => ({ air: empty(), offset: empty() }));
  const row = new Float64Array(probes.length);
  const scratch = new Float64Array(probes.length);

  const close = (block: number): void => {
    figures.level[block] = samples.level.quantile(0.5, least);
    figures.spread[block] = samples.spread.quantile(0.5, least);
    figures.swing[block] = samples.mean.quantile(0.9, least) - samples.mean.quantile(0.1, least);
    for (const part of [samples.level, samples.mean, samples.spread]) part.clear();
    each.forEach(({ air, offset }, k) => {
      own[k]!.air[block] = air.quantile(0.5, least);
      own[k]!.offset[block] = offset.quantile(0.5, least);
      air.clear();
      offset.clear();
    });
  };

  let open = blocks[0] ?? 0;
  for (let i = 0; i < log.grid.count; i++) {
    if (blocks[i] !== open) {
      close(open);
      open = blocks[i]!;
    }
    if (phase[i] !== Phase.cooling) continue;
    let sum = 0;
    let known = 0;
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (let k = 0; k < probes.length; k++) {
      const value = probes[k]!.record.values[i]!;
      row[k] = value;
      if (Number.isNaN(value)) continue;
      each[k]!.air.add(value);
      sum += value;
      known++;
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
    if (known === 0) continue;
    samples.mean.add(sum / known);
    samples.level.add(sum / known - targetAt(circuit.setPoint, i));
    if (known < 2) continue;
    samples.spread.add(high - low);
    for (let k = 0; k < probes.length; k++) each[k]!.offset.add(row[k]! - medianOfOthers(row, k, scratch));
  }
  close(open);

  return [
    { id: 'level', point: null, unit: 'K', values: figures.level },
    { id: 'spread', point: null, unit: 'K', values: figures.spread },
    { id: 'swing', point: null, unit: 'K', values: figures.swing },
    ...probes.flatMap(({ point }, k): Figure[] => [
      { id: 'air', point, unit: 'Cel', values: own[k]!.air },
      { id: 'offset', point, unit: 'K', values: own[k]!.offset },
    ]),
  ];
}

/** Median of the known entries other than `k`, put in order in `scratch` by insertion. */
function medianOfOthers(row: Float64Array, k: number, scratch: Float64Array): number {
  let count = 0;
  for (let j = 0; j < row.length; j++) {
    const value = row[j]!;
    if (j === k || Number.isNaN(value)) continue;
    let at = count++;
    while (at > 0 && scratch[at - 1]! > value) {
      scratch[at] = scratch[at - 1]!;
      at--;
    }
    scratch[at] = value;
  }
  const middle = count >> 1;
  if (count === 0) return Number.NaN;
  return count % 2 === 1 ? scratch[middle]! : (scratch[middle - 1]! + scratch[middle]!) / 2;
}
