import { median } from '../../maths/median.ts';
import { samplesIn } from '../../model/grid.ts';
import type { CircuitSignals, DefrostWindow } from '../../signals/types.ts';
import type { Kelvin } from '../../units/quantities.ts';
import type { Comparison, Span } from './comparison.ts';
import { errorOfFew, errorOfMedian } from './error-of-median.ts';
import { blockMinutes, blocksPerHour, type OffsetTable } from './offset-table.ts';

const leastDefrosts = 3;
const openingMinutes = 15;
const returnMinutes = 15;
const laterReturnMinutes = 45;

const wanderBlocks = 2 * blocksPerHour;
const blocksPerDay = (24 * 60) / blockMinutes;
/** Differences that a day must give, and days that each side must have. */
const leastInDay = 12;
const leastDays = 3;

/**
 * Whether the offset of a probe stays what it is, whatever the coil does and whatever goes on at the case.
 *
 * A false offset is added to the reading: it is the same at every moment, and no more restless than the air was before. Air that
 * comes in at one place is `G (T_store − T)` of heat, against what coil and neighbours take from there: its offset grows when the
 * coil stops taking heat, closes or grows again while the coil pulls down with all it has, and moves with every door and draught.
 *
 * `inconstancy`: root mean square of `r − 1`, less the share that chance explains, over four moments (the first 15 minutes of
 * defrosts, their last 20, the 15 minutes after them and the half hour after that); `r` is the change of the offset at that
 * moment over `cooling`, its change before the defrosts. `wanderRatio`: mean change of the settled offset over two hours, now over
 * before, by the median day, less what the neighbours among themselves grew.
 */
export function constancy(
  signals: CircuitSignals,
  table: OffsetTable,
  probe: number,
  peers: readonly number[],
  compared: Comparison,
  cooling: { readonly shift: Kelvin; readonly error: Kelvin },
): { [feature: string]: number } {
  return {
    ...inconstancy(signals, probe, peers, compared, cooling),
    ...wanderRatio(table, probe, peers, compared),
  };
}

function inconstancy(
  signals: CircuitSignals,
  probe: number,
  peers: readonly number[],
  compared: Comparison,
  cooling: { readonly shift: Kelvin; readonly error: Kelvin },
): { [feature: string]: number } {
  const { grid } = signals.log;
  const middle = (one: number, from: number, to: number): number =>
    median(signals.circuit.probes[one]!.record.values.subarray(from, to));
  const moments: readonly ((window: DefrostWindow, one: number) => number)[] = [
    ({ from, to }, one) => middle(one, from, Math.min(to, from + samplesIn(grid, openingMinutes))),
    ({ probes }, one) => probes[one]!.late,
    ({ to }, one) => middle(one, to, to + samplesIn(grid, returnMinutes)),
    ({ to }, one) =>
      middle(one, to + samplesIn(grid, returnMinutes), to + samplesIn(grid, laterReturnMinutes)),
  ];
  let excess = 0;
  let chance = 0;
  let used = 0;
  for (const at of moments) {
    const offsets = ({ from, to }: Span): Float64Array =>
      Float64Array.from(
        signals.defrosts
          .filter((window) => window.complete && window.from >= from && window.to <= to)
          .map((window) => at(window, probe) - median(peers.map((peer) => at(window, peer)))),
      ).filter(Number.isFinite);
    const now = offsets(compared.now);
    const old = offsets(compared.old);
    if (now.length === 0 || old.length < leastDefrosts) continue;
    const ratio = (median(now) - median(old)) / cooling.shift;
    const error =
      Math.hypot(
        now.length < leastDefrosts ? errorOfFew(now, old) : errorOfMedian(now),
        errorOfMedian(old),
        ratio * cooling.error,
      ) / Math.abs(cooling.shift);
    excess += (ratio - 1) ** 2 - error ** 2;
    chance += error ** 2;
    used++;
  }
  if (used < moments.length) return {};
  return {
    inconstancy: Math.sqrt(Math.max(0, excess / used)),
    inconstancyError: Math.sqrt(chance / used),
  };
}

/** Of the settled offset over two hours, as a share of what it was. */
function wanderRatio(
  table: OffsetTable,
  probe: number,
  peers: readonly number[],
  compared: Comparison,
): { [feature: string]: number } {
  const own = grownWander(table.offset(probe, peers), table, compared);
  const others = peers.flatMap((peer) => {
    const rest = peers.filter((other) => other !== peer);
    return rest.length === 0 ? [] : [grownWander(table.offset(peer, rest), table, compared).ratio];
  });
  const shared = Math.max(1, median(others.filter(Number.isFinite)) || 1);
  if (!Number.isFinite(own.ratio)) return {};
  return { wanderRatio: own.ratio / shared, wanderRatioError: own.error / shared };
}

function grownWander(offsets: Float64Array, { samplesPerBlock }: OffsetTable, { old, now }: Comparison) {
  const of = ({ from, to }: Span): Float64Array =>
    wanderOfDays(offsets.subarray(Math.ceil(from / samplesPerBlock), Math.floor(to / samplesPerBlock)));
  const before = of(old);
  const since = of(now);
  if (Math.min(before.length, since.length) < leastDays || !(median(before) > 0))
    return { ratio: Number.NaN, error: Number.NaN };
  const ratio = median(since) / median(before);
  return { ratio, error: Math.hypot(errorOfMedian(since), ratio * errorOfMedian(before)) / median(before) };
}

/** Mean absolute change over two hours of each day that gives enough of them, K. */
function wanderOfDays(offsets: Float64Array): Float64Array {
  const days: number[] = [];
  for (let from = 0; from < offsets.length; from += blocksPerDay) {
    let sum = 0;
    let count = 0;
    const to = Math.min(offsets.length, from + blocksPerDay);
    for (let at = from + wanderBlocks; at < to; at++) {
      const change = Math.abs(offsets[at]! - offsets[at - wanderBlocks]!);
      if (Number.isNaN(change)) continue;
      sum += change;
      count++;
    }
    if (count >= leastInDay) days.push(sum / count);
  }
  return Float64Array.from(days);
}
