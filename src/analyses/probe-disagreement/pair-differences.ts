import type { CircuitSignals } from '../../signals/types.ts';

/** Daily difference of two probes, first minus second, in settled air; NaN where a day is thin. */
export interface PairDifference {
  readonly first: number;
  readonly second: number;
  readonly days: Float64Array;
}

/** Least share of a day's settled samples that both probes must hold. */
const leastCoverage = 0.6;

/** All pairs of the given probes of the circuit, in probe order. */
export function pairDifferences(signals: CircuitSignals, probes: readonly number[]): PairDifference[] {
  const pairs: PairDifference[] = [];
  for (const first of probes) {
    for (const second of probes) {
      if (second <= first) continue;
      const a = signals.probes[first]!;
      const b = signals.probes[second]!;
      const days = a.median.map((value, day) =>
        a.coverage[day]! >= leastCoverage && b.coverage[day]! >= leastCoverage
          ? value - b.median[day]!
          : Number.NaN,
      );
      pairs.push({ first, second, days });
    }
  }
  return pairs;
}
