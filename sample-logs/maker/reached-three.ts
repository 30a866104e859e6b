import type { PlantedFault, SimulatedStore } from './simulated-store.ts';

const threeFahrenheit = 5 / 3;
const dayMinutes = 1440;

/**
 * First end of a 24-hour stretch after onset whose settled air stands 3 °F above where it stood in the two days
 * before onset: the faulty place against the mean of its neighbours, or the circuit's mean when no place is named.
 */
export function reachedThree(store: SimulatedStore, fault: PlantedFault): number | null {
  const circuit = store.circuits.find((candidate) => candidate.id === fault.circuit);
  if (circuit === undefined) return null;
  const defrost = circuit.others.find((point) => point.role === 'defrost')!.values;
  const rise = new Float64Array(store.count).fill(Number.NaN);
  let sinceDefrost = 0;
  for (let i = 0; i < store.count; i++) {
    sinceDefrost = defrost[i] === 1 ? 0 : sinceDefrost + 1;
    if (sinceDefrost < 60) continue;
    let others = 0;
    let mean = 0;
    circuit.air.forEach((point, place) => {
      mean += point.values[i]! / circuit.air.length;
      if (place !== fault.probe) others += point.values[i]! / (circuit.air.length - 1);
    });
    const local = fault.probe !== null && circuit.air.length > 1;
    rise[i] = local ? circuit.air[fault.probe]!.values[i]! - others : mean;
  }
  const onset = Math.round((fault.onset - store.startMs) / store.stepMs);
  const before = meanOver(rise, Math.max(0, onset - 2 * dayMinutes), onset);
  for (let end = onset + dayMinutes; end <= store.count; end += 60) {
    if (meanOver(rise, end - dayMinutes, end) - before >= threeFahrenheit)
      return store.startMs + end * store.stepMs;
  }
  return null;
}

function meanOver(values: Float64Array, from: number, to: number): number {
  let sum = 0;
  let count = 0;
  for (let i = from; i < to; i++) {
    if (Number.isNaN(values[i]!)) continue;
    sum += values[i]!;
    count++;
  }
  return sum / count;
}
