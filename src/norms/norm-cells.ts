import { blocksADay, type DayType, dayTypeOf } from '../figures/clock-blocks.ts';
import { selectQuantiles } from '../maths/select-rank.ts';
import type { Calendar } from '../model/grid.ts';
import type { NormCell } from './norm.ts';

/** Values of a history, each with the clock block (of the whole calendar) that it belongs to. */
export interface Placed {
  readonly values: Float64Array;
  /** −1 leaves a value out. */
  readonly blocks: Int32Array;
}

/** The values of one block of the day on one kind of day. */
interface Part {
  readonly dayType: DayType;
  readonly block: number;
  readonly values: Float64Array;
  readonly days: number;
}

/** Room to sort the values in; one for all figures of a log. */
export interface NormRoom {
  readonly parted: Float64Array;
  readonly pooled: Float64Array;
}

export function normRoom(mostValues: number): NormRoom {
  return { parted: new Float64Array(mostValues), pooled: new Float64Array(mostValues) };
}

const dayTypes: readonly DayType[] = ['weekday', 'weekend'];

/** p10, median and p90 (type 7) of the values of each block of the day and day type, and of whole days. */
export function normCells(
  placed: Placed,
  calendar: Calendar,
  room: NormRoom = normRoom(placed.values.length),
): NormCell[] {
  const parts = partsOf(placed, calendar, room.parted);
  return [...dayTypes, 'any' as const].flatMap((dayType) =>
    [...Array(blocksADay).keys(), null].flatMap((block): NormCell[] => {
      const chosen = parts.filter(
        (part) => (dayType === 'any' || part.dayType === dayType) && (block === null || part.block === block),
      );
      const pooled = room.pooled.subarray(0, joined(chosen, room.pooled));
      if (pooled.length === 0) return [];
      const [p10, median, p90] = selectQuantiles(pooled, [0.1, 0.5, 0.9]);
      return [{ dayType, block, days: daysIn(chosen), p10: p10!, median: median!, p90: p90! }];
    }),
  );
}

function joined(parts: readonly Part[], buffer: Float64Array): number {
  let end = 0;
  for (const { values } of parts) {
    buffer.set(values, end);
    end += values.length;
  }
  return end;
}

/** Counted first, so that the values of each part lie together. */
function partsOf({ values, blocks }: Placed, calendar: Calendar, room: Float64Array): Part[] {
  const offset = calendar.days.map(({ weekday }) => dayTypes.indexOf(dayTypeOf(weekday)) * blocksADay);
  const partAt = (i: number): number => {
    const at = blocks[i]!;
    if (at < 0 || Number.isNaN(values[i]!)) return -1;
    return offset[Math.floor(at / blocksADay)]! + (at % blocksADay);
  };
  const counts = new Int32Array(dayTypes.length * blocksADay);
  const days = new Int32Array(counts.length);
  const lastDay = new Int32Array(counts.length).fill(-1);
  for (let i = 0; i < values.length; i++) {
    const part = partAt(i);
    if (part < 0) continue;
    const day = Math.floor(blocks[i]! / blocksADay);
    counts[part]!++;
    if (lastDay[part] !== day) days[part]!++;
    lastDay[part] = day;
  }
  const ends = new Int32Array(counts.length);
  for (let part = 1; part < counts.length; part++) ends[part] = ends[part - 1]! + counts[part - 1]!;
  for (let i = 0; i < values.length; i++) {
    const part = partAt(i);
    if (part >= 0) room[ends[part]!++] = values[i]!;
  }
  return Array.from(counts, (count, k) => ({
    dayType: dayTypes[Math.floor(k / blocksADay)]!,
    block: k % blocksADay,
    values: room.subarray(ends[k]! - count, ends[k]),
    days: days[k]!,
  }));
}

/** Every kind of day counts with its fullest block. */
function daysIn(parts: readonly Part[]): number {
  return dayTypes.reduce((sum, dayType) => {
    const days = parts.filter((part) => part.dayType === dayType).map((part) => part.days);
    return sum + Math.max(0, ...days);
  }, 0);
}
