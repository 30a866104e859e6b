import { median } from '../../maths/median.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import type { DayChange } from './change-in-days.ts';
import { locateStep } from './locate-step.ts';
import { offsetBlocks } from './offset-blocks.ts';

const blockMinutes = 60;
/** Share of the whole change that must happen from one day to the next, and from one six hours to the next. */
const shareOfDays = 0.45;
const shareOfHours = 0.35;
/** How far from the old level, as a share of the change, the day before a step may stand. */
const flatBefore = 0.3;

/**
 * The sample at which most of a change happened at once, or null for a creep. A step may go on creeping: a fan
 * stops, then its coil ices. Windows of a day keep the difference between day and night out of it.
 */
export function findStep(
  signals: CircuitSignals,
  probe: number,
  peers: readonly number[],
  change: DayChange,
): number | null {
  const { days } = signals.log.calendar;
  const first = days[Math.max(0, change.start - 1)]!.from;
  const last = days[Math.min(days.length - 1, change.end + 1)]!.to;
  const { samplesPerBlock, values } = offsetBlocks(signals, probe, peers, blockMinutes);
  const size = change.after - change.before;
  const around = (block: number, hours: number) => ({
    before: median(values.subarray(Math.max(0, block - hours), block)),
    after: median(values.subarray(block, block + hours)),
  });
  let best = { block: -1, jump: 0 };
  for (let block = Math.ceil(first / samplesPerBlock); block < last / samplesPerBlock; block++) {
    const { before, after } = around(block, 24);
    const jump = (after - before) / size;
    if (jump > best.jump && Math.abs(before - change.before) <= flatBefore * Math.abs(size))
      best = { block, jump };
  }
  if (best.jump < shareOfDays) return null;
  const from = Math.max(0, best.block - 36) * samplesPerBlock;
  const to = Math.min(values.length, best.block + 36) * samplesPerBlock;
  const at = locateStep(signals, probe, peers, { from, to }, around(best.block, 24));
  const hours = around(Math.round(at / samplesPerBlock), 6);
  return (hours.after - hours.before) / size >= shareOfHours ? at : null;
}
