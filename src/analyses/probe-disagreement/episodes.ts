import { median } from '../../maths/median.ts';
import { normalConsistency } from '../../maths/median-absolute-deviation.ts';
import { samplesIn } from '../../model/grid.ts';
import { type CircuitSignals, Phase } from '../../signals/types.ts';
import { blockMinutes, type OffsetTable } from './offset-table.ts';
import { settings } from './settings.ts';

/** A few hours in which a probe was far from its neighbours and came back. Samples, half open. */
export interface Episode {
  readonly from: number;
  readonly to: number;
  /** Median departure from its usual offset, K. */
  readonly shift: number;
  /** Largest step against its neighbours from one reading to the next at its edges, outside defrosts, as a share of the shift. */
  readonly edge: number;
}

const longestDays = 3;
const bridgedBlocks = 1;
const scalesOfNoise = 6;

/**
 * Passing departures of one probe. A bad contact comes and goes; a door or a pallet does so too, but air has
 * inertia: `edge` tells a jump from a slope. Defrosts and their recovery are left out.
 */
export function episodesOf(
  signals: CircuitSignals,
  table: OffsetTable,
  probe: number,
  peers: readonly number[],
): Episode[] {
  if (table.mostApart(probe, peers) < settings.episodeShift.value) return [];
  const apart = fromUsual(table.offset(probe, peers));
  const least = Math.max(
    settings.episodeShift.value,
    scalesOfNoise * normalConsistency * median(apart.map(Math.abs)),
  );
  if (!apart.some((departure) => Math.abs(departure) >= least)) return [];
  const alone = peers.map((peer) => fromUsual(table.offset(probe, [peer])));
  const isOut = (block: number): boolean => {
    const departure = apart[block]!;
    if (!(Math.abs(departure) >= least)) return false;
    const agreeing = alone.filter((one) => one[block]! * Math.sign(departure) >= least / 2);
    return agreeing.length >= settings.voteShare.value * peers.length;
  };
  return stretches(apart.length, isOut)
    .filter(({ from, to }) => {
      const hours = ((to - from) * blockMinutes) / 60;
      return hours >= settings.episodeHours.value && hours <= 24 * longestDays && to < apart.length;
    })
    .map(({ from, to }) => episode(signals, probe, peers, apart, from, to));
}

/** Offsets less their median over the log. */
function fromUsual(offsets: Float64Array): Float64Array {
  const usual = median(offsets);
  return offsets.map((value) => value - usual);
}

function stretches(count: number, isOut: (block: number) => boolean): { from: number; to: number }[] {
  const found: { from: number; to: number }[] = [];
  for (let block = 0; block < count; block++) {
    if (!isOut(block)) continue;
    const last = found.at(-1);
    if (last !== undefined && block - last.to <= bridgedBlocks) last.to = block + 1;
    else found.push({ from: block, to: block + 1 });
  }
  return found;
}

function episode(
  signals: CircuitSignals,
  probe: number,
  peers: readonly number[],
  apart: Float64Array,
  from: number,
  to: number,
): Episode {
  const block = samplesIn(signals.log.grid, blockMinutes);
  const shift = median(apart.subarray(from, to));
  const { probes } = signals.circuit;
  const own = probes[probe]!.record.values;
  const others = peers.map((peer) => probes[peer]!.record.values);
  let steepest = 0;
  for (const edge of [from, to]) {
    for (let i = Math.max(1, (edge - 1) * block); i < Math.min(own.length, (edge + 1) * block); i++) {
      if (isThawing(signals, i) || isThawing(signals, i - 1)) continue;
      const common = median(others.map((values) => values[i]! - values[i - 1]!));
      const step = Math.abs(own[i]! - own[i - 1]! - common);
      if (step > steepest) steepest = step;
    }
  }
  return { from: from * block, to: to * block, shift, edge: steepest / Math.abs(shift) };
}

/** A defrost and the way back from it: there all air leaps, and each end at its own pace. */
function isThawing({ phase }: CircuitSignals, sample: number): boolean {
  return phase[sample] === Phase.defrost || phase[sample] === Phase.recovery;
}
