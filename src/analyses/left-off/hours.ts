import { median } from '../../maths/median.ts';
import { samplesIn } from '../../model/grid.ts';
import type { Target } from '../../model/record.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { Phase } from '../../signals/types.ts';
import { settings } from './settings.ts';

/** A dead band that nobody stated. */
export const usualDifferential = 1.1;

/** A circuit hour by hour from the start of the log, defrosts and what is unknown left out. */
export interface CircuitHours {
  readonly samples: number;
  /** As by `hourlyOpening`. */
  readonly opening: Float64Array;
  /**
   * How far the controlled air is under the level at which the valve would be shut, K. Where the probes usually stand
   * below the set point while the valve regulates (the controller steers on something else), that much lower.
   */
  readonly under: Float64Array;
  /** What the controller steers on, above the set point; with no set point, above its own usual level. */
  readonly above: Float64Array;
  /** Where `above` usually stands while the valve regulates, by the first third of the hours; 0 or less. */
  readonly bias: number;
  /** Mean above the set point of each usable probe. */
  readonly probes: readonly Float64Array[];
}

/** Mean opening of the valve in each hour; NaN where less than a quarter of it is known, and without a valve. */
export function hourlyOpening({ circuit, log, phase }: CircuitSignals): Float64Array {
  const samples = samplesIn(log.grid, 60);
  if (circuit.valve !== null) return hourMeans(circuit.valve.values, null, phase, samples);
  return new Float64Array(Math.ceil(log.grid.count / samples)).fill(Number.NaN);
}

/** @param opening `hourlyOpening` of the same circuit */
export function circuitHours(signals: CircuitSignals, opening: Float64Array): CircuitHours {
  const { circuit, log } = signals;
  const samples = samplesIn(log.grid, 60);
  const probes = circuit.probes
    .filter((_, i) => signals.usable[i])
    .map((probe) => hourMeans(probe.record.values, circuit.setPoint, signals.phase, samples));
  const isModulating = circuit.valve?.quantity === 'fraction';
  const shutUnder = isModulating ? 0 : (circuit.differential ?? usualDifferential) / 2;
  const above = controlled(signals, probes, probes[0]?.length ?? 0);
  const isRegulated = (_: number, k: number) => isRegulating(opening[k]!);
  const atFirst = above.subarray(0, Math.ceil(above.length / 3)).filter(isRegulated);
  const regulated = atFirst.length >= settings.endedHours.value ? atFirst : above.filter(isRegulated);
  const bias = Math.min(0, median(regulated) || 0);
  const shutAt = bias - shutUnder - settings.forcedUnder.value;
  return { samples, opening, above, bias, under: above.map((value) => shutAt - value), probes };
}

/** Share of an hour under which a valve is as good as shut. */
const leastOpening = 0.05;

/** By the share of an hour that it fed: a valve that opens and shuts, neither shut nor held open. */
export function isRegulating(opening: number): boolean {
  return opening > leastOpening && opening < settings.forcedOpening.value;
}

/** Hourly means of what a record stands above `target`, while cooling or recovering. */
function hourMeans(
  values: Float64Array,
  target: Target | null,
  phase: Uint8Array,
  samples: number,
): Float64Array {
  const hours = new Float64Array(Math.ceil(values.length / samples));
  const targets = target === null || typeof target === 'number' ? null : target.values;
  const fixed = typeof target === 'number' ? target : 0;
  for (let k = 0; k < hours.length; k++) {
    const to = Math.min(values.length, (k + 1) * samples);
    let sum = 0;
    let known = 0;
    for (let i = k * samples; i < to; i++) {
      if (phase[i] !== Phase.cooling && phase[i] !== Phase.recovery) continue;
      const value = values[i]! - (targets === null ? fixed : targets[i]!);
      if (Number.isNaN(value)) continue;
      sum += value;
      known++;
    }
    hours[k] = 4 * known >= samples ? sum / known : Number.NaN;
  }
  return hours;
}

/** What the controller steers on, above the set point; with no set point, above its own usual level. */
function controlled(signals: CircuitSignals, probes: readonly Float64Array[], count: number): Float64Array {
  const { controls, setPoint } = signals.circuit;
  const one = typeof controls === 'object' ? indexOf(signals, controls.probe) : -1;
  const combined = Float64Array.from({ length: count }, (_, k) => {
    const known = probes.map((hours) => hours[k]!).filter((value) => !Number.isNaN(value));
    if (known.length === 0) return Number.NaN;
    if (one >= 0) return probes[one]![k]!;
    if (controls === 'warmest') return Math.max(...known);
    if (controls === 'coldest') return Math.min(...known);
    return known.reduce((sum, value) => sum + value, 0) / known.length;
  });
  if (setPoint !== null) return combined;
  const usual = median(combined.subarray(0, Math.ceil(count / 3)));
  return combined.map((value) => value - usual);
}

/** Place of the controlling probe among the usable ones, −1 when it is none of them. */
function indexOf({ circuit, usable }: CircuitSignals, point: string): number {
  return circuit.probes.filter((_, i) => usable[i]).findIndex((probe) => probe.point === point);
}
