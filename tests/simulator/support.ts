import type { SimulatedCircuit } from '../../sample-logs/maker/simulated-store.ts';

export function roleOf(circuit: SimulatedCircuit, role: string): Float64Array {
  return circuit.others.find((point) => point.role === role)!.values;
}

/** Share of the cooling minutes in [from, to) with the valve feeding, and its starts an hour. */
export function feeding(circuit: SimulatedCircuit, from: number, to: number) {
  const valve = roleOf(circuit, 'valve');
  const defrost = roleOf(circuit, 'defrost');
  let minutes = 0;
  let open = 0;
  let starts = 0;
  for (let i = Math.max(1, from); i < to; i++) {
    if (defrost[i] === 1) continue;
    minutes++;
    open += valve[i]!;
    if (valve[i]! > 0.5 && valve[i - 1]! <= 0.5) starts++;
  }
  return { duty: open / minutes, startsPerHour: starts / (minutes / 60) };
}

/** Ends of the defrosts in [from, to): the first minute after each. */
export function defrostEnds(circuit: SimulatedCircuit, from: number, to: number): number[] {
  const defrost = roleOf(circuit, 'defrost');
  const ends: number[] = [];
  for (let i = Math.max(1, from); i < to; i++) if (defrost[i - 1] === 1 && defrost[i] === 0) ends.push(i);
  return ends;
}

/** Minutes from a defrost's end until the ten-minute mean of a probe is back at `level`; null if not in 4 h. */
export function recoveryMinutes(values: Float64Array, end: number, level: number): number | null {
  for (let at = end; at < end + 240 && at < values.length; at++) {
    let mean = 0;
    for (let k = 0; k < 10; k++) mean += values[at - k]! / 10;
    if (mean <= level) return at - end;
  }
  return null;
}

export function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1]!;
}
