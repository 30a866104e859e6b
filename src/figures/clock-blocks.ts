import { minuteOfDay } from '../model/grid.ts';
import type { Log } from '../model/log.ts';

/** A day is looked at in six blocks of four hours on the site's clock: 00–04, 04–08 … 20–24. */
export const blockHours = 4;
export const blocksADay = 24 / blockHours;

/** `08–12 h`. */
export function blockTitle(block: number): string {
  const two = (hour: number) => String(hour).padStart(2, '0');
  return `${two(block * blockHours)}–${two((block + 1) * blockHours)} h`;
}

/** The samples of a log by the blocks of its days. */
export interface ClockBlocks {
  /** Blocks of the whole calendar. */
  readonly count: number;
  /** Of every sample `day * blocksADay + block`, day being its position in the calendar. */
  readonly of: Int32Array;
  /** The same as runs of samples, in their order. */
  readonly runs: readonly BlockRun[];
}

export function clockBlocks({ grid, calendar }: Pick<Log, 'grid' | 'calendar'>): ClockBlocks {
  const of = new Int32Array(grid.count);
  calendar.days.forEach((day, d) => {
    for (let i = day.from; i < day.to; i++) {
      of[i] = d * blocksADay + Math.floor(minuteOfDay(grid, calendar, i) / (blockHours * 60));
    }
  });
  return { count: calendar.days.length * blocksADay, of, runs: runsOf(of) };
}

/** The samples of one clock block, half open. */
export interface BlockRun {
  readonly block: number;
  readonly from: number;
  readonly to: number;
}

function runsOf(blocks: Int32Array): BlockRun[] {
  const runs: BlockRun[] = [];
  let from = 0;
  for (let i = 1; i <= blocks.length; i++) {
    if (i < blocks.length && blocks[i] === blocks[from]) continue;
    runs.push({ block: blocks[from]!, from, to: i });
    from = i;
  }
  return runs;
}

/** Saturdays and Sundays trade otherwise than the rest of the week. */
export type DayType = 'weekday' | 'weekend';

export function dayTypeOf(weekday: number): DayType {
  return weekday === 0 || weekday === 6 ? 'weekend' : 'weekday';
}
