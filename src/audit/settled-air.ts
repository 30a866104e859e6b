import { limitOf } from '../exposure/circuit-exposure.ts';
import type { SampleRange } from '../exposure/exposure.ts';
import type { SettledReadings } from '../figures/block-readings.ts';
import { blocksADay, type ClockBlocks } from '../figures/clock-blocks.ts';
import { knownCount } from '../maths/known-count.ts';
import type { RecordFacts } from '../signals/record-facts.ts';
import type { CircuitSignals } from '../signals/types.ts';
import type { Celsius } from '../units/quantities.ts';
import type { Month } from './month.ts';

/** The settled air of a circuit over a month; quantiles are of type 7, NaN where nothing is known. */
export interface SettledAir {
  /** One a probe, in their order. */
  readonly probes: readonly SettledProbe[];
  /** Middle of all readings of the usable probes together. */
  readonly median: Celsius;
}

interface SettledProbe {
  /** One a day of the month. */
  readonly days: readonly SettledDay[];
  readonly median: Celsius;
}

interface SettledDay {
  readonly readings: number;
  /** Readings above the limit of the circuit; 0 where it has none. */
  readonly above: number;
  readonly p10: Celsius;
  readonly median: Celsius;
  readonly p90: Celsius;
}

/** @param blocks those that the readings are parted by */
export function settledAir(
  signals: CircuitSignals,
  readings: SettledReadings,
  blocks: ClockBlocks,
  month: Month,
): SettledAir {
  const { circuit, usable } = signals;
  const blocksOf = (d: number): number[] => Array.from({ length: blocksADay }, (_, b) => d * blocksADay + b);
  const pools = readings.all.pooled(
    circuit.probes.flatMap((_, k) =>
      month.days.map((d) => blocksOf(d).map((block) => k * blocks.count + block)),
    ),
  );
  const partsOf = circuit.probes.map((_, k) => month.days.map((_, at) => k * month.days.length + at));
  const middle = (parts: readonly number[]): number => pools.quantiles(parts, [0.5])[0]!;
  const limit = limitOf(signals)?.value ?? Number.POSITIVE_INFINITY;
  return {
    probes: partsOf.map((parts) => ({
      days: parts.map((part) => {
        const [p10, median, p90] = pools.quantiles([part], [0.1, 0.5, 0.9]);
        const above = pools.above(part, limit);
        return { readings: pools.count(part), above, p10: p10!, median: median!, p90: p90! };
      }),
      median: middle(parts),
    })),
    median: middle(partsOf.filter((_, k) => usable[k]).flat()),
  };
}

/** Readings of a probe in a range; of a record that is known throughout none is looked at. */
export function readingsIn({ record, known }: RecordFacts, { from, to }: SampleRange): number {
  return known === record.values.length ? to - from : knownCount(record.values, from, to);
}
