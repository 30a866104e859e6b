import { blockHours, blocksADay, dayTypeOf } from '../figures/clock-blocks.ts';
import { dayAt, indexAt, minuteOfDay } from '../model/grid.ts';
import type { Log } from '../model/log.ts';
import type { EpochMs } from '../units/quantities.ts';
import type { Norm, NormCell } from './norm.ts';
import { edgeShare, fewestDaysACell } from './settings.ts';

export interface ReadingVerdict {
  readonly value: number;
  readonly position: 'usual' | 'edge' | 'unusual';
  readonly side: 'below' | 'within' | 'above';
  /** The range it was held against: moved with the outdoor temperature where the norm is tied to it. */
  readonly p10: number;
  readonly p90: number;
  readonly cell: NormCell;
  /** Outdoor temperature by which the range was moved, or null. */
  readonly outdoor: number | null;
}

/** Is this reading normal here, at this time of day? Null where the norm has no range for it. */
export function judgeReading(norm: Norm, value: number, at: EpochMs, log: Log): ReadingVerdict | null {
  const sample = indexAt(log.grid, at);
  const day = dayAt(log.calendar, sample);
  const block = Math.floor(minuteOfDay(log.grid, log.calendar, sample) / (blockHours * 60));
  return judgeInBlock(norm, value, day * blocksADay + block, log);
}

/** The same for a clock block of the calendar. */
export function judgeInBlock(norm: Norm, value: number, clockBlock: number, log: Log): ReadingVerdict | null {
  const day = Math.floor(clockBlock / blocksADay);
  const dayType = dayTypeOf(log.calendar.days[day]!.weekday);
  const cell = cellFor(norm, dayType, clockBlock % blocksADay);
  if (cell === null || Number.isNaN(value)) return null;
  const outdoor = norm.tie?.outdoor[day] ?? Number.NaN;
  const shift = Number.isNaN(outdoor) ? 0 : norm.tie!.slope * (outdoor - norm.tie!.usualOutdoor);
  const p10 = cell.p10 + shift;
  const p90 = cell.p90 + shift;
  const away = value > p90 ? value - p90 : value < p10 ? p10 - value : 0;
  const isFar = away > edgeShare * (p90 - p10) && away > 1e-9;
  return {
    value,
    position: away === 0 ? 'usual' : isFar ? 'unusual' : 'edge',
    side: value > p90 ? 'above' : value < p10 ? 'below' : 'within',
    p10,
    p90,
    cell,
    outdoor: Number.isNaN(outdoor) ? null : outdoor,
  };
}

/** The range of these hours and this kind of day, of these hours on any day, of any hour: the first with enough days. */
function cellFor({ cells }: Norm, dayType: string, block: number): NormCell | null {
  const named = (type: string, hours: number | null) =>
    cells.find((cell) => cell.dayType === type && cell.block === hours && cell.days >= fewestDaysACell);
  return named(dayType, block) ?? named('any', block) ?? named('any', null) ?? null;
}
