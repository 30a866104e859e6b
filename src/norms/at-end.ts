import { clockBlocks } from '../figures/clock-blocks.ts';
import { timeAt } from '../model/grid.ts';
import type { Log } from '../model/log.ts';
import type { EpochMs } from '../units/quantities.ts';
import { judgeInBlock, type ReadingVerdict } from './judge-reading.ts';
import type { Norm } from './norm.ts';
import { endBlocks } from './settings.ts';

/** What a figure shows at the end of an export; an old value is not what stands there now. */
export type AtEnd =
  | { readonly value: number; readonly verdict: ReadingVerdict | null }
  /** Where it is not known any more: start of the clock block in which it last was, null where it never was. */
  | { readonly lastKnown: EpochMs | null };

/** The last value of a figure, where it is of the last hours: a circuit that stands off, or a dead column, has none. */
export function figureAtEnd(norm: Norm, log: Log): AtEnd {
  const known = norm.values.findLastIndex((value) => !Number.isNaN(value));
  if (known < 0) return { lastKnown: null };
  const blocks = clockBlocks(log).of;
  const age = blocks.at(-1)! - known;
  if (age > (norm.id === 'recovery' ? endBlocks.recovery : endBlocks.others)) {
    return { lastKnown: timeAt(log.grid, blocks.indexOf(known)) };
  }
  const value = norm.values[known]!;
  return { value, verdict: judgeInBlock(norm, value, known, log) };
}
