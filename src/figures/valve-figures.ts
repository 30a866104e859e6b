import { samplesIn, stepMinutes } from '../model/grid.ts';
import type { CircuitSignals } from '../signals/types.ts';
import { Phase } from '../signals/types.ts';
import { leastBlockMinutes } from './air-figures.ts';
import { BlockSamples } from './block-samples.ts';
import { blocksADay } from './clock-blocks.ts';
import type { Figure } from './figure.ts';

const openAbove = 0.03;
const halfOpen = 0.5;

/** Duty, openings an hour (of an on/off valve) and superheat while feeding; nothing without the columns. */
export function valveFigures({ circuit, phase, log }: CircuitSignals, blocks: Int32Array): Figure[] {
  const { valve, superheat } = circuit;
  if (valve === null && superheat === null) return [];
  const length = log.calendar.days.length * blocksADay;
  const fed = new Float64Array(length);
  const known = new Float64Array(length);
  const starts = new Float64Array(length);
  const heat = new Float64Array(length).fill(Number.NaN);
  const samples = new BlockSamples(log.grid);
  const least = samplesIn(log.grid, leastBlockMinutes);
  const isSwitched = valve?.quantity === 'status';
  let open = blocks[0] ?? 0;
  for (let i = 0; i < log.grid.count; i++) {
    const block = blocks[i]!;
    if (block !== open) {
      heat[open] = samples.quantile(0.5, least);
      samples.clear();
      open = block;
    }
    if (phase[i] !== Phase.cooling) continue;
    const opening = valve === null ? 1 : valve.values[i]!;
    if (superheat !== null && opening > openAbove) samples.add(superheat.values[i]!);
    if (valve === null || Number.isNaN(opening)) continue;
    known[block]!++;
    fed[block]! += opening;
    if (isSwitched && i > 0 && opening > halfOpen && valve.values[i - 1]! <= halfOpen) starts[block]!++;
  }
  heat[open] = samples.quantile(0.5, least);

  const hours = stepMinutes(log.grid) / 60;
  const perKnown = (sums: Float64Array, unit: number) =>
    sums.map((sum, block) => (known[block]! < least ? Number.NaN : sum / (known[block]! * unit)));
  return [
    ...(valve === null ? [] : [{ id: 'duty', point: null, unit: '1', values: perKnown(fed, 1) } as const]),
    ...(isSwitched
      ? [{ id: 'valve-starts', point: null, unit: '{starts}/h', values: perKnown(starts, hours) } as const]
      : []),
    ...(superheat === null
      ? []
      : [{ id: 'superheat', point: superheat.point, unit: 'K', values: heat } as const]),
  ];
}
