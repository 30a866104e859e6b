import { type FaultName, faultCatalogue } from './fault-catalogue.ts';
import type { PlantedFault, SimulatedCircuit, SimulatedStore } from './simulated-store.ts';

const threeFahrenheit = 5 / 3;
const dayMinutes = 1440;

/**
 * Replaces planned sizes by what the history shows: for faults that warm something, the largest 24-hour mean rise
 * of settled air above the days before the onset, and the end of the first 24 hours that stand 3 °F above them.
 */
export function withMeasuredFaults(store: SimulatedStore): SimulatedStore {
  const faults = store.truth.faults.map((fault) => {
    const { sized } = faultCatalogue[fault.fault as FaultName];
    const lengthens = fault.fault === 'recovery-lengthening';
    if (!sized && !lengthens) return fault;
    const circuit = store.circuits.find((candidate) => candidate.id === fault.circuit)!;
    if (lengthens) return { ...fault, size: lengthening(store, circuit, fault), sizeUnit: 'min' };
    const { largest, reachedThree } = measure(store, circuit, fault);
    return { ...fault, size: Math.round(largest * 100) / 100, reachedThree };
  });
  return { ...store, truth: { ...store.truth, faults } };
}

function measure(store: SimulatedStore, circuit: SimulatedCircuit, fault: PlantedFault) {
  const rise = settledRise(store, circuit, fault.probe);
  const onset = Math.round((fault.onset - store.startMs) / store.stepMs);
  const before = rise.mean(Math.max(0, onset - 5 * dayMinutes), onset);
  let largest = 0;
  let reachedThree: number | null = null;
  for (let end = onset + dayMinutes; end <= store.count; end += 60) {
    const above = rise.mean(end - dayMinutes, end) - before;
    largest = Math.max(largest, above);
    if (above >= threeFahrenheit) reachedThree ??= store.startMs + end * store.stepMs;
  }
  return { largest, reachedThree };
}

/** Minutes by which the median recovery of the last four days exceeds the one of the days before the onset. */
function lengthening(store: SimulatedStore, circuit: SimulatedCircuit, fault: PlantedFault): number {
  const onset = Math.round((fault.onset - store.startMs) / store.stepMs);
  const recoveries = (from: number, to: number): number => {
    const minutes = circuit.air.flatMap(({ values }) => probeRecoveries(circuit, values, from, to));
    minutes.sort((a, b) => a - b);
    return minutes[minutes.length >> 1] ?? 0;
  };
  return (
    recoveries(store.count - 4 * dayMinutes, store.count) -
    recoveries(Math.max(0, onset - 5 * dayMinutes), onset)
  );
}

/** Minutes from each defrost's end until the ten-minute mean is back near where it stood in the hour before it. */
function probeRecoveries(
  circuit: SimulatedCircuit,
  values: Float64Array,
  from: number,
  to: number,
): number[] {
  const defrost = circuit.others.find((point) => point.role === 'defrost')!.values;
  const minutes: number[] = [];
  let before = Number.NaN;
  for (let i = Math.max(61, from); i < to; i++) {
    if (defrost[i] === 1 && defrost[i - 1] === 0) before = mean(values, i - 60, i);
    if (defrost[i] === 1 || defrost[i - 1] === 0 || Number.isNaN(before)) continue;
    let at = i;
    const level = before + circuit.differential / 2 + 0.6;
    while (at < Math.min(to, i + 240) && mean(values, at - 9, at + 1) > level) at++;
    minutes.push(at - i);
  }
  return minutes;
}

function mean(values: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += values[i]!;
  return sum / (to - from);
}

/**
 * Settled air (no defrost for an hour): of one place against the mean of its neighbours, or of the whole circuit.
 * Running sums, so that the mean over any stretch is two subtractions.
 */
function settledRise(store: SimulatedStore, circuit: SimulatedCircuit, place: number | null) {
  const defrost = circuit.others.find((point) => point.role === 'defrost')!.values;
  const probes = circuit.air.length;
  const sums = new Float64Array(store.count + 1);
  const counts = new Uint32Array(store.count + 1);
  let sinceDefrost = 0;
  for (let i = 0; i < store.count; i++) {
    sinceDefrost = defrost[i] === 1 ? 0 : sinceDefrost + 1;
    const settled = sinceDefrost >= 60;
    let value = 0;
    if (settled) {
      let all = 0;
      for (const point of circuit.air) all += point.values[i]!;
      const own = place === null ? 0 : circuit.air[place]!.values[i]!;
      value = place === null || probes === 1 ? all / probes : own - (all - own) / (probes - 1);
    }
    sums[i + 1] = sums[i]! + value;
    counts[i + 1] = counts[i]! + (settled ? 1 : 0);
  }
  return {
    mean: (from: number, to: number): number => (sums[to]! - sums[from]!) / (counts[to]! - counts[from]!),
  };
}
