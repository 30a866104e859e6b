import { type CircuitSignals, Phase } from '../../signals/types.ts';

/** Mean absolute second difference of settled samples on each day, K; NaN where too few samples are settled. */
export interface DailyScatter {
  readonly all: Float64Array;
  /** The part that no neighbour shares: all × √(1 − r²), r with the neighbour that goes along best. */
  readonly alone: Float64Array;
}

const leastSamples = 40;

/**
 * Of each of `probes`, which are held against each other. A straight rise or fall leaves second differences at zero,
 * noise leaves all of itself, coarse samples some of a cycle.
 */
export function dailyScatters(
  signals: CircuitSignals,
  probes: readonly number[],
): ReadonlyMap<number, DailyScatter> {
  const { days } = signals.log.calendar;
  const seconds = probes.map((probe) => secondDifferences(signals, probe));
  const unknown = () => new Float64Array(days.length).fill(Number.NaN);
  const scatters = probes.map(() => ({ all: unknown(), alone: unknown() }));
  days.forEach(({ from, to }, day) => {
    const shared = largestLikeness(seconds, from, to);
    for (const [at, own] of seconds.entries()) {
      const { mean, count } = meanOf(own, from, to);
      if (count < leastSamples) continue;
      scatters[at]!.all[day] = mean;
      scatters[at]!.alone[day] = mean * Math.sqrt(Math.max(0, 1 - shared[at]! * shared[at]!));
    }
  });
  return new Map(probes.map((probe, at) => [probe, scatters[at]!]));
}

/** For each series its likeness with the other that goes along best, no less than 0; each pair is compared once. */
function largestLikeness(series: readonly Float64Array[], from: number, to: number): Float64Array {
  const largest = new Float64Array(series.length);
  for (let first = 0; first < series.length; first++) {
    for (let second = first + 1; second < series.length; second++) {
      const alike = likeness(series[first]!, series[second]!, from, to);
      if (alike > largest[first]!) largest[first] = alike;
      if (alike > largest[second]!) largest[second] = alike;
    }
  }
  return largest;
}

/** Mean absolute second difference over the settled samples of a stretch; NaN where there is none. */
export function scatterOf(signals: CircuitSignals, probe: number, from: number, to: number): number {
  return meanOf(secondDifferences(signals, probe, from, to), 0, to - from).mean;
}

/** `x(t) − (x(t−1) + x(t+1)) / 2` of the samples `from` to `to`; NaN outside settled air and beside a gap. */
function secondDifferences(
  signals: CircuitSignals,
  probe: number,
  from = 0,
  to = signals.phase.length,
): Float64Array {
  const { values } = signals.circuit.probes[probe]!.record;
  const { phase } = signals;
  const seconds = new Float64Array(to - from).fill(Number.NaN);
  const last = Math.min(to, values.length - 1);
  for (let i = Math.max(1, from); i < last; i++) {
    if (phase[i] !== Phase.cooling) continue;
    seconds[i - from] = values[i]! - (values[i - 1]! + values[i + 1]!) / 2;
  }
  return seconds;
}

function meanOf(seconds: Float64Array, from: number, to: number): { mean: number; count: number } {
  let sum = 0;
  let count = 0;
  for (let i = from; i < to; i++) {
    const second = seconds[i]!;
    if (Number.isNaN(second)) continue;
    sum += Math.abs(second);
    count++;
  }
  return { mean: count === 0 ? Number.NaN : sum / count, count };
}

/** Correlation about zero of two series over a stretch; 0 where neither moves. */
function likeness(first: Float64Array, second: Float64Array, from: number, to: number): number {
  let product = 0;
  let squares = 0;
  let otherSquares = 0;
  for (let i = from; i < to; i++) {
    const a = first[i]!;
    const b = second[i]!;
    if (Number.isNaN(a) || Number.isNaN(b)) continue;
    product += a * b;
    squares += a * a;
    otherSquares += b * b;
  }
  const scale = Math.sqrt(squares * otherSquares);
  return scale > 0 ? product / scale : 0;
}
