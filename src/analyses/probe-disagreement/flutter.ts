import { median } from '../../maths/median.ts';
import { quantile } from '../../maths/quantile.ts';
import { samplesIn } from '../../model/grid.ts';
import { type CircuitSignals, Phase } from '../../signals/types.ts';
import { settings } from './settings.ts';

export interface Flutter {
  /** Sample at which it began, and the day after its last (position in the calendar). */
  readonly from: number;
  readonly lastDay: number;
  /** Median over the fluttering days: scatter in K, and over what is usual. */
  readonly scatter: number;
  readonly ratio: number;
}

const leastDays = 2;
/** A reading on the edge between two steps of its logger jumps by one of them: so much of a step is no flutter. */
const stepShare = 0.6;
const leastSamples = 40;
/** A probe may usually scatter this much more than its neighbours before the ratio itself is in doubt. */
const mostUsualRatio = 1.6;
/** A value held until it changes moves in stairs of its threshold, more on a busy day: only plain flutter counts. */
const heldRatio = 3;

/**
 * Days on which a probe jumps from sample to sample as air with its thermal inertia cannot. Scatter is the mean
 * absolute second difference of settled samples, which a straight rise or fall leaves at zero; coarse sampling
 * puts some of the cycle into it, so that it is held against the neighbours and against its own quieter days.
 *
 * @param scatters `dailyScatter` of the probe and of its neighbours
 */
export function flutter(
  signals: CircuitSignals,
  probe: number,
  peers: readonly number[],
  scatters: ReadonlyMap<number, Float64Array>,
): Flutter | null {
  const own = scatters.get(probe)!;
  const others = peers.map((peer) => scatters.get(peer)!);
  const usualOf = own.map((_, day) => median(others.map((other) => other[day]!)));
  const ratios = own.map((value, day) => value / usualOf[day]!);
  const isHeld = signals.circuit.probes[probe]!.record.logging === 'change-of-value';
  const usualRatio = isHeld ? heldRatio : Math.min(mostUsualRatio, Math.max(1, quantile(ratios, 0.25)));
  const least = Math.max(
    settings.flutterLeast.value,
    stepShare * signals.circuit.probes[probe]!.record.resolution,
  );
  const days: number[] = [];
  for (let day = 0; day < own.length; day++) {
    if (flutters(own[day]!, usualOf[day]!, usualRatio, least)) days.push(day);
  }
  if (days.length < leastDays) return null;
  const scatter = median(days.map((day) => own[day]!));
  const usual = median(days.map((day) => usualOf[day]! * usualRatio));
  return {
    from: beginning(signals, probe, days[0]!, { before: usual, after: scatter }),
    lastDay: days.at(-1)! + 1,
    scatter,
    ratio: scatter / Math.max(usual, settings.flutterLeast.value / settings.flutterFactor.value),
  };
}

function flutters(own: number, neighbours: number, usualRatio: number, least: number): boolean {
  const expected = neighbours * usualRatio;
  const excess = Math.sqrt(Math.max(0, own * own - expected * expected));
  if (!(excess >= least)) return false;
  return own >= settings.flutterGrowth.value * expected || own >= settings.flutterFactor.value * neighbours;
}

/** Scatter on each day; NaN where too few samples are settled. */
export function dailyScatter(signals: CircuitSignals, probe: number): Float64Array {
  return Float64Array.from(signals.log.calendar.days, ({ from, to }) => {
    const { mean, count } = scatterOf(signals, probe, from, to);
    return count >= leastSamples ? mean : Number.NaN;
  });
}

/** Mean absolute second difference over the settled samples of a stretch; NaN where there is none. */
function scatterOf(
  signals: CircuitSignals,
  probe: number,
  from: number,
  to: number,
): { mean: number; count: number } {
  const { values } = signals.circuit.probes[probe]!.record;
  const { phase } = signals;
  const last = Math.min(to, values.length - 1);
  let sum = 0;
  let count = 0;
  for (let i = Math.max(1, from); i < last; i++) {
    if (phase[i] !== Phase.cooling) continue;
    const second = Math.abs(values[i]! - (values[i - 1]! + values[i + 1]!) / 2);
    if (Number.isNaN(second)) continue;
    sum += second;
    count++;
  }
  return { mean: count === 0 ? Number.NaN : sum / count, count };
}

const blockMinutes = 30;

/** The cut between quiet and fluttering half hours with the least absolute deviation, on that day and the one before. */
function beginning(
  signals: CircuitSignals,
  probe: number,
  day: number,
  levels: { readonly before: number; readonly after: number },
): number {
  const { days } = signals.log.calendar;
  const block = samplesIn(signals.log.grid, blockMinutes);
  const first = days[Math.max(0, day - 1)]!.from;
  let gain = 0;
  let most = 0;
  let best = first;
  for (let from = first; from < days[day]!.to; from += block) {
    const { mean } = scatterOf(signals, probe, from, Math.min(days[day]!.to, from + block));
    if (Number.isNaN(mean)) continue;
    gain += Math.abs(mean - levels.after) - Math.abs(mean - levels.before);
    if (gain > most) {
      most = gain;
      best = from + block;
    }
  }
  return best;
}
