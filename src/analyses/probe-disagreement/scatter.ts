import { type CircuitSignals, Phase } from '../../signals/types.ts';

/** What a probe's settled samples of each day scatter, in K, by their mean absolute second difference. */
export interface DailyScatter {
  /** NaN on a day with too few settled samples. */
  readonly all: Float64Array;
  /**
   * The part of a day's scatter that no neighbour shares: all × √(1 − r²), r the correlation (about zero, no less than
   * 0) with the neighbour that goes along best. Worked out only when asked for.
   */
  readonly alone: (day: number) => number;
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
  const { phase } = signals;
  const { days } = signals.log.calendar;
  const valuesOf = (probe: number): Float64Array => signals.circuit.probes[probe]!.record.values;
  return new Map(
    probes.map((probe) => {
      const own = valuesOf(probe);
      const others = probes.filter((other) => other !== probe).map(valuesOf);
      const all = Float64Array.from(days, ({ from, to }) => meanScatter(own, phase, from, to, leastSamples));
      const alone = (day: number): number => {
        const { from, to } = days[day]!;
        let shared = 0;
        for (const other of others) shared = Math.max(shared, likeness(own, other, phase, from, to));
        return all[day]! * Math.sqrt(Math.max(0, 1 - shared * shared));
      };
      return [probe, { all, alone }] as const;
    }),
  );
}

/** Mean absolute second difference over the settled samples of a stretch; NaN where there is none. */
export function scatterOf(signals: CircuitSignals, probe: number, from: number, to: number): number {
  return meanScatter(signals.circuit.probes[probe]!.record.values, signals.phase, from, to, 1);
}

/** Of `x(t) − (x(t−1) + x(t+1)) / 2` at the settled samples that have both neighbours; NaN of fewer than `least`. */
function meanScatter(
  values: Float64Array,
  phase: Uint8Array,
  from: number,
  to: number,
  least: number,
): number {
  const first = Math.max(1, from);
  const last = Math.min(to, values.length - 1);
  let sum = 0;
  let count = 0;
  let before = values[first - 1]!;
  let here = values[first]!;
  for (let i = first; i < last; i++) {
    const after = values[i + 1]!;
    const second = here - (before + after) / 2;
    before = here;
    here = after;
    if (phase[i] !== Phase.cooling || Number.isNaN(second)) continue;
    sum += Math.abs(second);
    count++;
  }
  return count < least ? Number.NaN : sum / count;
}

/** Correlation about zero of the second differences of two probes over a stretch; 0 where neither moves. */
function likeness(
  first: Float64Array,
  second: Float64Array,
  phase: Uint8Array,
  from: number,
  to: number,
): number {
  const last = Math.min(to, first.length - 1);
  let product = 0;
  let squares = 0;
  let otherSquares = 0;
  for (let i = Math.max(1, from); i < last; i++) {
    const a = first[i]! - (first[i - 1]! + first[i + 1]!) / 2;
    const b = second[i]! - (second[i - 1]! + second[i + 1]!) / 2;
    if (phase[i] !== Phase.cooling || Number.isNaN(a + b)) continue;
    product += a * b;
    squares += a * a;
    otherSquares += b * b;
  }
  const scale = Math.sqrt(squares * otherSquares);
  return scale > 0 ? product / scale : 0;
}
