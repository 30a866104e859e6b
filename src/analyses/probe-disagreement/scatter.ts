import { type CircuitSignals, Phase } from '../../signals/types.ts';

/** Mean absolute second difference of settled samples on each day, K; NaN where too few samples are settled. */
export interface DailyScatter {
  readonly all: Float64Array;
  /** The part that no neighbour shares: all × √(1 − r²), r with the neighbour that goes along best. */
  readonly alone: Float64Array;
}

const leastSamples = 40;

/** A straight rise or fall leaves second differences at zero, noise leaves all of itself, coarse samples some of a cycle. */
export function dailyScatter(signals: CircuitSignals, probe: number, peers: readonly number[]): DailyScatter {
  const own = secondDifferences(signals, probe);
  const others = peers.map((peer) => secondDifferences(signals, peer));
  const { days } = signals.log.calendar;
  const all = new Float64Array(days.length).fill(Number.NaN);
  const alone = new Float64Array(days.length).fill(Number.NaN);
  days.forEach(({ from, to }, day) => {
    const { mean, count } = meanOf(own.subarray(from, to));
    if (count < leastSamples) return;
    const shared = Math.max(0, ...others.map((other) => likeness(own, other, from, to)));
    all[day] = mean;
    alone[day] = mean * Math.sqrt(Math.max(0, 1 - shared * shared));
  });
  return { all, alone };
}

/** Mean absolute second difference over the settled samples of a stretch; NaN where there is none. */
export function scatterOf(signals: CircuitSignals, probe: number, from: number, to: number): number {
  return meanOf(secondDifferences(signals, probe, from, to)).mean;
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
  for (let i = Math.max(1, from); i < Math.min(to, values.length - 1); i++) {
    if (phase[i] !== Phase.cooling) continue;
    seconds[i - from] = values[i]! - (values[i - 1]! + values[i + 1]!) / 2;
  }
  return seconds;
}

function meanOf(seconds: Float64Array): { mean: number; count: number } {
  let sum = 0;
  let count = 0;
  for (const second of seconds) {
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
