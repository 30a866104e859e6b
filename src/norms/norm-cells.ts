import type { BlockReadings } from '../figures/block-readings.ts';
import { blocksADay, type DayType, dayTypeOf } from '../figures/clock-blocks.ts';
import type { Calendar } from '../model/grid.ts';
import type { NormCell } from './norm.ts';

const dayTypes: readonly DayType[] = ['weekday', 'weekend'];
const allBlocks = [...Array(blocksADay).keys()];

/** Which pools of `filledBlocks`, weekdays first, make up a cell: by kind of day, each its blocks. */
const cellPools = [...dayTypes, 'any' as const].flatMap((dayType) =>
  [...allBlocks, null].map((block) => {
    const pools = dayTypes.flatMap((kind, k) =>
      dayType === kind || dayType === 'any'
        ? [(block === null ? allBlocks : [block]).map((one) => k * blocksADay + one)]
        : [],
    );
    return { dayType, block, pools, together: pools.flat() };
  }),
);

/** Positions in the calendar of the days that a norm is learnt from. */
export type LearntDays = Readonly<Record<DayType, readonly number[]>>;

/** @param learnt one a day of the calendar */
export function daysByType({ days }: Calendar, learnt: readonly boolean[]): LearntDays {
  const daysOf = (kind: DayType): number[] =>
    days.flatMap(({ weekday }, d) => (learnt[d] && dayTypeOf(weekday) === kind ? [d] : []));
  return { weekday: daysOf('weekday'), weekend: daysOf('weekend') };
}

/**
 * p10, median and p90 (type 7) of the readings of each block of the day and day type, and of whole days.
 */
export function normCells(readings: BlockReadings, days: LearntDays): NormCell[] {
  const filled = dayTypes.flatMap((kind) => filledBlocks(readings, days[kind]));
  const pools = readings.pooled(filled);
  return cellPools.flatMap(({ dayType, block, pools: ofCell, together }): NormCell[] => {
    const [p10, median, p90] = pools.quantiles(together, [0.1, 0.5, 0.9]);
    if (Number.isNaN(median!)) return [];
    return [{ dayType, block, days: restsOn(ofCell, filled), p10: p10!, median: median!, p90: p90! }];
  });
}

/** By block of the day: those clock blocks of the days that hold a reading. */
function filledBlocks(readings: BlockReadings, days: readonly number[]): number[][] {
  return allBlocks.map((block) =>
    days.map((d) => d * blocksADay + block).filter((place) => readings.count(place) > 0),
  );
}

/** Days that a cell rests on: every kind of day counts with its fullest block. */
function restsOn(ofCell: readonly (readonly number[])[], filled: readonly (readonly number[])[]): number {
  return ofCell.reduce((sum, pools) => sum + Math.max(0, ...pools.map((pool) => filled[pool]!.length)), 0);
}
