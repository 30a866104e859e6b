import { samplesIn } from '../model/grid.ts';
import type { Log, SuctionGroup } from '../model/log.ts';
import type { Record } from '../model/record.ts';
import { leastBlockMinutes } from './air-figures.ts';
import { type BlockReadings, blockMedians, blockReadings } from './block-readings.ts';
import type { ClockBlocks } from './clock-blocks.ts';
import type { Figure } from './figure.ts';

type GroupPoint = Pick<Figure, 'id' | 'unit'> & { readonly record: Record };

/** The points of a suction group that are followed. */
function groupPoints({ pressure, discharge, liquidLevel }: SuctionGroup): GroupPoint[] {
  return [
    ...(pressure === null ? [] : [{ id: 'suction', unit: 'kPa', record: pressure } as const]),
    ...(discharge === null ? [] : [{ id: 'discharge', unit: 'kPa', record: discharge } as const]),
    ...(liquidLevel === null ? [] : [{ id: 'liquid-level', unit: '1', record: liquidLevel } as const]),
  ];
}

/** Everything that is followed on a suction group, with the readings that it is the median of. */
export function groupReadings(
  group: SuctionGroup,
  { grid }: Log,
  blocks: ClockBlocks,
): { readonly figure: Figure; readonly readings: BlockReadings }[] {
  const least = samplesIn(grid, leastBlockMinutes);
  return groupPoints(group).map(({ id, unit, record }) => {
    const readings = blockReadings(record, blocks);
    const values = blockMedians(readings, blocks.count, least);
    return { figure: { id, point: record.point, unit, values }, readings };
  });
}

/** Medians by clock block. */
export function groupFigures(group: SuctionGroup, log: Log, blocks: ClockBlocks): Figure[] {
  return groupReadings(group, log, blocks).map(({ figure }) => figure);
}
