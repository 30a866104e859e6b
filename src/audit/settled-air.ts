import { limitOf } from '../exposure/circuit-exposure.ts';
import type { SampleRange } from '../exposure/exposure.ts';
import { type PartedSeries, pooledParts } from '../maths/pooled-parts.ts';
import type { RecordFacts } from '../signals/record-facts.ts';
import { type CircuitSignals, Phase } from '../signals/types.ts';
import type { Celsius } from '../units/quantities.ts';
import type { Month } from './month.ts';
import type { MonthScope } from './scope.ts';

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

const made = new WeakMap<MonthScope, ReadonlyMap<CircuitSignals, SettledAir>>();

/** Looked through once for all tables. */
export function settledAir(circuit: CircuitSignals, scope: MonthScope): SettledAir {
  const known = made.get(scope) ?? settledOfAll(scope);
  made.set(scope, known);
  return known.get(circuit)!;
}

function settledOfAll({ signals, month }: MonthScope): Map<CircuitSignals, SettledAir> {
  return new Map(signals.circuits.map((circuit) => [circuit, settledOf(circuit, month)]));
}

/** One part a probe and day. */
function settledOf(signals: CircuitSignals, month: Month): SettledAir {
  const { circuit, usable } = signals;
  const days = month.days.length;
  const places = settledPlaces(signals, month);
  const partsOf = circuit.probes.map((_, k) => month.days.map((_, at) => k * days + at));
  const series = circuit.probes.map(
    ({ record }, k): PartedSeries => ({
      values: record.values,
      places,
      partOf: Int32Array.from(partsOf[k]!),
    }),
  );
  const resolutions = new Set(circuit.probes.map(({ record }) => record.resolution));
  const [resolution] = resolutions.size === 1 ? resolutions : [0];
  const pools = pooledParts(series, circuit.probes.length * days, resolution!);
  const middle = (parts: readonly number[]): number => pools.quantiles(parts, [0.5])[0]!;
  const limit = limitOf(signals)?.value ?? Number.POSITIVE_INFINITY;
  return {
    probes: partsOf.map((parts) => ({
      days: parts.map((part) => {
        const [p10, median, p90] = pools.quantiles([part], [0.1, 0.5, 0.9]);
        const readings = pools.count(part);
        return { readings, above: pools.above(part, limit), p10: p10!, median: median!, p90: p90! };
      }),
      median: middle(parts),
    })),
    median: middle(partsOf.filter((_, k) => usable[k]).flat()),
  };
}

/** Position in the month of the day of each sample in settled air; −1 of the others. */
function settledPlaces({ phase, log }: CircuitSignals, month: Month): Int32Array {
  const places = new Int32Array(phase.length).fill(-1);
  for (const [at, d] of month.days.entries()) markSettled(places, phase, log.calendar.days[d]!, at);
  return places;
}

function markSettled(places: Int32Array, phase: Uint8Array, { from, to }: SampleRange, at: number): void {
  for (let i = from; i < to; i++) if (phase[i] === Phase.cooling) places[i] = at;
}

/** Readings of a probe in a range; of a record that is known throughout none is looked at. */
export function readingsIn({ record, known }: RecordFacts, range: SampleRange): number {
  return known === record.values.length ? range.to - range.from : knownIn(record.values, range);
}

export function knownIn(values: Float64Array, { from, to }: SampleRange): number {
  let count = 0;
  for (let i = from; i < to; i++) if (!Number.isNaN(values[i]!)) count++;
  return count;
}
