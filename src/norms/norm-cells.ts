import { blocksADay, type DayType, dayTypeOf } from '../figures/clock-blocks.ts';
import { type PoolingRoom, pooledParts, poolingRoom } from '../maths/pooled-parts.ts';
import type { Calendar } from '../model/grid.ts';
import type { NormCell } from './norm.ts';

/** Values of a history, each with the clock block (of the whole calendar) that it belongs to. */
export interface Placed {
  readonly values: Float64Array;
  /** −1 leaves a value out. */
  readonly blocks: Int32Array;
  /** Step in which the values were logged; 0 where none is known. */
  readonly resolution: number;
}

const dayTypes: readonly DayType[] = ['weekday', 'weekend'];
const parts = dayTypes.length * blocksADay;
const allBlocks = [...Array(blocksADay).keys()];

/** p10, median and p90 (type 7) of the values of each block of the day and day type, and of whole days. */
export function normCells(
  placed: Placed,
  calendar: Calendar,
  room: PoolingRoom = poolingRoom(placed.values.length),
): NormCell[] {
  const partOf = partsByBlock(calendar);
  const series = { values: placed.values, places: placed.blocks, partOf };
  const pools = pooledParts([series], parts, placed.resolution, room);
  const days = daysByPart(placed, partOf);
  return [...dayTypes, 'any' as const].flatMap((dayType) =>
    [...allBlocks, null].flatMap((block): NormCell[] => {
      const kinds = dayType === 'any' ? [...dayTypes.keys()] : [dayTypes.indexOf(dayType)];
      const chosen = (block === null ? allBlocks : [block]).flatMap((one) =>
        kinds.map((kind) => kind * blocksADay + one),
      );
      const [p10, median, p90] = pools.quantiles(chosen, [0.1, 0.5, 0.9]);
      if (Number.isNaN(median!)) return [];
      return [{ dayType, block, days: daysIn(chosen, days), p10: p10!, median: median!, p90: p90! }];
    }),
  );
}

/** For every clock block of the calendar its place among the day types and blocks of the day. */
function partsByBlock(calendar: Calendar): Int32Array {
  const partOf = new Int32Array(calendar.days.length * blocksADay);
  for (const [d, { weekday }] of calendar.days.entries()) {
    const first = dayTypes.indexOf(dayTypeOf(weekday)) * blocksADay;
    for (const block of allBlocks) partOf[d * blocksADay + block] = first + block;
  }
  return partOf;
}

/** Days that hold a value of the part. */
function daysByPart({ values, blocks }: Placed, partOf: Int32Array): Int32Array {
  const filled = new Uint8Array(partOf.length);
  for (let i = 0; i < values.length; i++) {
    if (blocks[i]! >= 0 && !Number.isNaN(values[i]!)) filled[blocks[i]!] = 1;
  }
  const days = new Int32Array(parts);
  filled.forEach((isFilled, block) => {
    days[partOf[block]!]! += isFilled;
  });
  return days;
}

/** Every kind of day counts with its fullest block. */
function daysIn(chosen: readonly number[], days: Int32Array): number {
  return dayTypes.reduce((sum, _, kind) => {
    const own = chosen.filter((part) => Math.floor(part / blocksADay) === kind);
    return sum + Math.max(0, ...own.map((part) => days[part]!));
  }, 0);
}
