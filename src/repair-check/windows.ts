import { blockHours, blocksADay } from '../figures/clock-blocks.ts';
import type { BlockRange } from '../figures/matched-change.ts';
import { indexAt, samplesIn, timeAt } from '../model/grid.ts';
import type { CircuitSignals } from '../signals/types.ts';
import type { EpochMs } from '../units/quantities.ts';
import {
  earlyDays,
  fewestDefrosts,
  fewestHours,
  fewestHoursWithoutDefrosts,
  mostDaysAfter,
  mostDaysBefore,
  settleHours,
  watchDays,
} from './settings.ts';

/** What is compared: whole clock blocks before the visit, and after it once the air has settled. */
export interface RepairWindows {
  readonly before: BlockRange;
  readonly after: BlockRange;
  /** The first days after it, null where they would overlap with `after`. */
  readonly early: BlockRange | null;
  readonly beforeFrom: EpochMs;
  readonly afterFrom: EpochMs;
  readonly afterTo: EpochMs;
  readonly hoursAfter: number;
  readonly defrostsAfter: number;
  /** Why nothing can be said yet, or null. */
  readonly tooEarly: string | null;
}

export function repairWindows(signals: CircuitSignals, blocks: Int32Array, serviced: EpochMs): RepairWindows {
  const { grid } = signals.log;
  const at = indexAt(grid, serviced);
  const settled = Math.min(grid.count - 1, at + samplesIn(grid, settleHours * 60));
  const last = blocks[grid.count - 1]! + 1;
  const afterFirst = Math.min(last, settled === grid.count - 1 ? last : blocks[settled]! + 1);
  const watchedTo = Math.min(last, afterFirst + watchDays * blocksADay);
  const after = { from: Math.max(afterFirst, watchedTo - mostDaysAfter * blocksADay), to: watchedTo };
  const earlyTo = afterFirst + earlyDays * blocksADay;
  const days = Math.min(mostDaysBefore, Math.max(2, Math.ceil((after.to - after.from) / blocksADay)));
  const before = { from: Math.max(0, blocks[at]! - days * blocksADay), to: blocks[at]! };
  const afterFrom = firstSample(blocks, after.from);
  const afterTo = firstSample(blocks, after.to);
  const defrostsAfter = signals.defrosts.filter(
    ({ from, to, complete }) => complete && from >= at && to <= grid.count,
  ).length;
  const hoursAfter = ((grid.count - at) * grid.stepMs) / 3_600_000;
  return {
    before,
    after,
    early: earlyTo <= after.from ? { from: afterFirst, to: earlyTo } : null,
    beforeFrom: timeAt(grid, firstSample(blocks, before.from)),
    afterFrom: timeAt(grid, afterFrom),
    afterTo: timeAt(grid, afterTo),
    hoursAfter,
    defrostsAfter,
    tooEarly: whyTooEarly(signals, before, hoursAfter, defrostsAfter),
  };
}

function whyTooEarly(
  signals: CircuitSignals,
  before: BlockRange,
  hoursAfter: number,
  defrostsAfter: number,
): string | null {
  const since = Math.floor(hoursAfter);
  if (signals.offSpells.some(({ to }) => to >= signals.log.grid.count)) {
    return 'the circuit is shut off at the end of the export; switch it on and export again after three defrosts';
  }
  if ((before.to - before.from) * blockHours < fewestHours) {
    return 'the export holds less than a day before the service; one that begins earlier would show what it was like';
  }
  if (signals.defrostSource === 'none') {
    return hoursAfter >= fewestHoursWithoutDefrosts
      ? null
      : `the export ends ${since} h after the service and shows no defrosts; at least ${fewestHoursWithoutDefrosts} h are needed`;
  }
  if (hoursAfter >= fewestHours && defrostsAfter >= fewestDefrosts) return null;
  return `the export ends ${since} h and ${defrostsAfter} complete defrosts after the service; at least ${fewestHours} h and ${fewestDefrosts} defrosts are needed`;
}

function firstSample(blocks: Int32Array, block: number): number {
  let low = 0;
  let high = blocks.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (blocks[middle]! < block) low = middle + 1;
    else high = middle;
  }
  return low;
}
