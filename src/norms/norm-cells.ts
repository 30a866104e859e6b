import { blocksADay, type DayType, dayTypeOf } from '../figures/clock-blocks.ts';
import { selectQuantile } from '../maths/select-rank.ts';
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

const dayTypes: readonly DayType[] = ['weekday', 'weekend'];

/** p10, median and p90 (type 7) of the values of each block of the day and day type, and of whole days. */
export function normCells(placed: Placed, calendar: Calendar): NormCell[] {
  const parts = partsOf(placed, calendar);
  const buffer = new Float64Array(parts.reduce((sum, { values }) => sum + values.length, 0));
  return [...dayTypes, 'any' as const].flatMap((dayType) =>
    [...Array(blocksADay).keys(), null].flatMap((block): NormCell[] => {
      const chosen = parts.filter(
        (part) => (dayType === 'any' || part.dayType === dayType) && (block === null || part.block === block),
      );
      const pooled = buffer.subarray(0, joined(chosen, buffer));
      if (pooled.length === 0) return [];
      const [p10, median, p90] = [0.1, 0.5, 0.9].map((share) => selectQuantile(pooled, share));
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

/** Counted first, so that the values of each part lie together in one array. */
function partsOf({ values, blocks }: Placed, calendar: Calendar): Part[] {
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
  const filled = Array.from(counts, (count) => new Float64Array(count));
  const ends = new Int32Array(counts.length);
  for (let i = 0; i < values.length; i++) {
    const part = partAt(i);
    if (part >= 0) filled[part]![ends[part]!++] = values[i]!;
  }
  return filled.map((part, k) => ({
    dayType: dayTypes[Math.floor(k / blocksADay)]!,
    block: k % blocksADay,
    values: part,
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
