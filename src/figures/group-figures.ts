import { samplesIn } from '../model/grid.ts';
import type { Log, SuctionGroup } from '../model/log.ts';
import type { Record } from '../model/record.ts';
import { leastBlockMinutes } from './air-figures.ts';
import { BlockSamples } from './block-samples.ts';
import { blocksADay } from './clock-blocks.ts';
import type { Figure } from './figure.ts';

type GroupPoint = Pick<Figure, 'id' | 'unit'> & { readonly record: Record };

/** The points of a suction group that are followed. */
export function groupPoints({ pressure, discharge, liquidLevel }: SuctionGroup): GroupPoint[] {
  return [
    ...(pressure === null ? [] : [{ id: 'suction', unit: 'kPa', record: pressure } as const]),
    ...(discharge === null ? [] : [{ id: 'discharge', unit: 'kPa', record: discharge } as const]),
    ...(liquidLevel === null ? [] : [{ id: 'liquid-level', unit: '1', record: liquidLevel } as const]),
  ];
}

/** Medians by clock block. */
export function groupFigures(group: SuctionGroup, log: Log, blocks: Int32Array): Figure[] {
  const least = samplesIn(log.grid, leastBlockMinutes);
  return groupPoints(group).map(({ id, unit, record }) => {
    const values = new Float64Array(log.calendar.days.length * blocksADay).fill(Number.NaN);
    const samples = new BlockSamples(log.grid);
    let open = blocks[0] ?? 0;
    for (let i = 0; i < log.grid.count; i++) {
      if (blocks[i] !== open) {
        values[open] = samples.quantile(0.5, least);
        samples.clear();
        open = blocks[i]!;
      }
      samples.add(record.values[i]!);
    }
    values[open] = samples.quantile(0.5, least);
    return { id, point: record.point, unit, values };
  });
}
