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
  readonly values: number[];
  days: number;
  lastDay: number;
}

const dayTypes: readonly DayType[] = ['weekday', 'weekend'];

/** p10, median and p90 (type 7) of the values of each block of the day and day type, and of whole days. */
export function normCells(placed: Placed, calendar: Calendar): NormCell[] {
  const parts = partsOf(placed, calendar);
  return [...dayTypes, 'any' as const].flatMap((dayType) =>
    [...Array(blocksADay).keys(), null].flatMap((block): NormCell[] => {
      const chosen = parts.filter(
        (part) => (dayType === 'any' || part.dayType === dayType) && (block === null || part.block === block),
      );
      const pooled = Float64Array.from(chosen.flatMap(({ values }) => values));
      if (pooled.length === 0) return [];
      const [p10, median, p90] = [0.1, 0.5, 0.9].map((share) => selectQuantile(pooled, share));
      return [{ dayType, block, days: daysIn(chosen), p10: p10!, median: median!, p90: p90! }];
    }),
  );
}

function partsOf({ values, blocks }: Placed, calendar: Calendar): Part[] {
  const parts = dayTypes.flatMap((dayType) =>
    Array.from(
      { length: blocksADay },
      (_, block): Part => ({ dayType, block, values: [], days: 0, lastDay: -1 }),
    ),
  );
  const offset = calendar.days.map(({ weekday }) => dayTypes.indexOf(dayTypeOf(weekday)) * blocksADay);
  for (let i = 0; i < values.length; i++) {
    const at = blocks[i]!;
    if (at < 0 || Number.isNaN(values[i]!)) continue;
    const day = Math.floor(at / blocksADay);
    const part = parts[offset[day]! + (at % blocksADay)]!;
    part.values.push(values[i]!);
    if (part.lastDay !== day) part.days++;
    part.lastDay = day;
  }
  return parts;
}

/** Every kind of day counts with its fullest block: a block of a whole day has as many days as its best part. */
function daysIn(parts: readonly Part[]): number {
  return dayTypes.reduce((sum, dayType) => {
    const days = parts.filter((part) => part.dayType === dayType).map((part) => part.days);
    return sum + Math.max(0, ...days);
  }, 0);
}
