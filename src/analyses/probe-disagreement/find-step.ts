import { median } from '../../maths/median.ts';
import { normalConsistency } from '../../maths/median-absolute-deviation.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import type { DayChange } from './change-in-days.ts';
import { locateStep } from './locate-step.ts';
import { blocksPerHour, type OffsetTable } from './offset-table.ts';

/** Share of the whole change that must happen from one day to the next, and from one six hours to the next. */
const shareOfDays = 0.35;
const shareOfHours = 0.3;
/** The jump must also be this many robust scales of the six-hour jumps before it; fewer where a day or two made it all. */
const scalesOfJumps = 5;
const scalesWhenShort = 2;
const shortDays = 2;
const searchHours = 36;
/** How far from the old level, as a share of the change, the day before a step may stand. */
const flatBefore = 0.3;

/**
 * The sample at which much of a change happened at once, or null for a creep. A step may go on creeping: a fan
 * stops, then its coil ices. Windows of a day keep the difference between day and night out of it, and the
 * jumps of the days before say how large a jump means nothing.
 */
export function findStep(
  signals: CircuitSignals,
  table: OffsetTable,
  probe: number,
  peers: readonly number[],
  change: DayChange,
): number | null {
  const { days } = signals.log.calendar;
  const first = days[Math.max(0, change.start - 1)]!.from;
  const last = days[Math.min(days.length - 1, change.end + 1)]!.to;
  const { samplesPerBlock } = table;
  const values = table.offset(probe, peers);
  const size = change.after - change.before;
  const around = (block: number, hours: number) => ({
    before: median(values.subarray(Math.max(0, block - hours * blocksPerHour), block)),
    after: median(values.subarray(block, block + hours * blocksPerHour)),
  });
  const jumpAt = (block: number, hours: number): number => {
    const { before, after } = around(block, hours);
    return (after - before) / size;
  };
  if (isBesideGap(signals, probe, change)) {
    return locateStep(signals, table, probe, peers, { from: days[change.start]!.from, to: last }, change);
  }
  let best = { block: -1, jump: 0 };
  for (let block = Math.ceil(first / samplesPerBlock); block < last / samplesPerBlock; block++) {
    const { before, after } = around(block, 24);
    const jump = (after - before) / size;
    if (jump > best.jump && Math.abs(before - change.before) <= flatBefore * Math.abs(size))
      best = { block, jump };
  }
  if (best.jump < shareOfDays) return null;
  const from = Math.max(0, best.block - searchHours * blocksPerHour) * samplesPerBlock;
  const to = Math.min(values.length, best.block + searchHours * blocksPerHour) * samplesPerBlock;
  const at = locateStep(signals, table, probe, peers, { from, to }, around(best.block, 24));
  const usual: number[] = [];
  for (let block = 6 * blocksPerHour; block < first / samplesPerBlock; block++)
    usual.push(Math.abs(jumpAt(block, 6)));
  const noise = usual.length >= 24 * blocksPerHour ? normalConsistency * median(usual) : 0;
  const jump = jumpAt(Math.round(at / samplesPerBlock), 6);
  const scales = change.end - change.start <= shortDays ? scalesWhenShort : scalesOfJumps;
  return jump >= Math.max(shareOfHours, scales * noise) ? at : null;
}

/** Share of the change made within the six hours on either side of a sample; NaN beside a gap. */
export function jumpShare(
  table: OffsetTable,
  probe: number,
  peers: readonly number[],
  change: DayChange,
  at: number,
): number {
  const values = table.offset(probe, peers);
  const block = Math.round(at / table.samplesPerBlock);
  const reach = 6 * blocksPerHour;
  const before = median(values.subarray(Math.max(0, block - reach), block));
  return (median(values.subarray(block, block + reach)) - before) / (change.after - change.before);
}

/** True when no day between the two levels is known: what came while nothing was logged is no creep that was seen. */
function isBesideGap(signals: CircuitSignals, probe: number, change: DayChange): boolean {
  const between = signals.probes[probe]!.median.subarray(change.start + 1, change.end);
  return between.length > 0 && !between.some(Number.isFinite);
}
