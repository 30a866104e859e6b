import type { SimulatedCircuit, SimulatedStore } from '../../sample-logs/maker/simulated-store.ts';

/**
 * When an alarm would first have tripped after `fromMs`: the value above `limits.high` for the delay without a
 * break, the timer reset in defrost and for 30 minutes after it. Read minute by minute, nothing clever.
 */
export function firstAlarm(
  store: SimulatedStore,
  circuit: SimulatedCircuit,
  input: 'average' | number,
  minutes: number,
  fromMs: number,
): number | null {
  const defrost = circuit.others.find((point) => point.role === 'defrost')!.values;
  const from = Math.max(0, Math.round((fromMs - store.startMs) / store.stepMs));
  let above = 0;
  let lockedOut = 0;
  for (let i = from; i < store.count; i++) {
    lockedOut = defrost[i] === 1 ? 30 : lockedOut - 1;
    let value = 0;
    if (input === 'average') {
      for (const point of circuit.air) value += point.values[i]! / circuit.air.length;
    } else value = circuit.air[input]!.values[i]!;
    above = lockedOut <= 0 && value > circuit.limits.high ? above + 1 : 0;
    if (above >= minutes) return store.startMs + i * store.stepMs;
  }
  return null;
}
