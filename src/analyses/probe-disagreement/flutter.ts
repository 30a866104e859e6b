import { median } from '../../maths/median.ts';
import { quantile } from '../../maths/quantile.ts';
import { samplesIn } from '../../model/grid.ts';
import { clockWindows } from '../../signals/clock-windows.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { type DailyScatter, scatterOf } from './scatter.ts';
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
/** A probe may usually scatter this much more than its neighbours before the ratio itself is in doubt. */
const mostUsualRatio = 1.6;
/** In distances from the 25th to the 5th percentile, one standard deviation of a normal spread: to the median, and three above it. */
const usualSpread = 3.7;
/** A value held until it changes moves in stairs of its threshold, more on a busy day: only plain flutter counts. */
const heldRatio = 1.6;
/** Flutter that goes on with this share of its strength is not over. */
const goesOnShare = 0.5;
/** Of its jumps by day a bad contact keeps so much by night. */
const nightShare = 0.5;
/** No door makes a probe jump so many times as much as its neighbours. */
const plainRatio = 3;

/**
 * Days on which a probe jumps from sample to sample as air with its thermal inertia cannot. Logged coarsely, a
 * cycle jumps too, but neighbours that are fed by one valve jump with it: what counts is the scatter that no
 * neighbour shares, and only where it adds to the usual one. A neighbour that has grown quiet (its section ices,
 * its fan stands) makes nobody else flutter.
 *
 * @param scatters `dailyScatters` of the probe and of its neighbours
 */
export function flutter(
  signals: CircuitSignals,
  probe: number,
  peers: readonly number[],
  scatters: ReadonlyMap<number, DailyScatter>,
): Flutter | null {
  const { all: own, alone } = scatters.get(probe)!;
  const { record } = signals.circuit.probes[probe]!;
  const expected = expectedScatter(
    own,
    peers.map((peer) => scatters.get(peer)!.all),
    record.logging === 'change-of-value',
  );
  const least = Math.max(settings.flutterLeast.value, stepShare * record.resolution);
  const days: number[] = [];
  for (let day = 0; day < own.length; day++) {
    if (flutters(own[day]!, () => alone(day), expected[day]!, least)) days.push(day);
  }
  if (days.length < leastDays) return null;
  const scatter = median(days.map((day) => own[day]!));
  const usual = median(days.map((day) => expected[day]!));
  if (scatter < plainRatio * usual && isQuietByNight(signals, probe, peers, days, added(scatter, usual)))
    return null;
  return {
    from: beginning(signals, probe, days[0]!, { before: usual, after: scatter }),
    lastDay: lastDay(days, alone, own.length) + 1,
    scatter,
    ratio: scatter / Math.max(usual, settings.flutterLeast.value / mostUsualRatio),
  };
}

/** What the probe would scatter by its neighbours, today's or their usual, and by its own quieter days. */
function expectedScatter(own: Float64Array, others: readonly Float64Array[], isHeld: boolean): Float64Array {
  const today = own.map((_, day) => median(others.map((other) => other[day]!)));
  const busy = quantile(today, 0.75);
  const ratio = isHeld ? heldRatio : usualRatio(own.map((value, day) => value / today[day]!));
  const quiet = quantile(own, 0.25);
  return today.map((value) => {
    const usual = Math.max(value, busy);
    return Math.max(usual * ratio, Math.min(quiet, usual * mostUsualRatio));
  });
}

/**
 * What the daily ratio to the neighbours can be on a day without flutter: the level of its quieter days and above it
 * `usualSpread` times what these differ among each other. The louder days may flutter and are not asked.
 */
function usualRatio(daily: Float64Array): number {
  const level = quantile(daily, 0.25);
  const spread = level - quantile(daily, 0.05);
  return Math.min(mostUsualRatio, Math.max(1, level + usualSpread * spread));
}

/** Jumps add to what the air does: the reading must scatter more than expected, by what nobody shares. */
function flutters(own: number, alone: () => number, expected: number, least: number): boolean {
  return (
    added(own, expected) >= least &&
    own >= settings.flutterGrowth.value * expected &&
    alone() >= Math.max(least, settings.flutterAlone.value * own)
  );
}

/** Scatters that have nothing to do with each other add by their squares. */
function added(scatter: number, usual: number): number {
  return Math.sqrt(Math.max(0, scatter * scatter - usual * usual));
}

/**
 * Whether what a probe scatters on `days` over what it should (`byDay`, K) is gone from 01:00 to 05:00. Doors are opened
 * in trading hours, each for itself, and every opening is a jump; a bad splice knows no hours.
 */
function isQuietByNight(
  signals: CircuitSignals,
  probe: number,
  peers: readonly number[],
  days: readonly number[],
  byDay: number,
): boolean {
  const clock = clockWindows(signals.log.grid, signals.log.calendar);
  const nightly = (one: number): number =>
    median(
      days.flatMap((day) => {
        const { from, to } = clock[day]!.night;
        const scatter = scatterOf(signals, one, from, to);
        return Number.isNaN(scatter) ? [] : [scatter];
      }),
    );
  const others = peers.map(nightly).filter((scatter) => !Number.isNaN(scatter));
  return added(nightly(probe), Math.max(0, ...others)) < nightShare * byDay;
}

function lastDay(days: readonly number[], alone: (day: number) => number, count: number): number {
  const strength = median(days.map(alone));
  let last = days.at(-1)!;
  for (let day = last + 1; day < count; day++) {
    if (alone(day) < goesOnShare * strength) break;
    last = day;
  }
  return last;
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
    const mean = scatterOf(signals, probe, from, Math.min(days[day]!.to, from + block));
    if (Number.isNaN(mean)) continue;
    gain += Math.abs(mean - levels.after) - Math.abs(mean - levels.before);
    if (gain > most) {
      most = gain;
      best = from + block;
    }
  }
  return best;
}
