import { samplesIn } from '../model/grid.ts';
import type { CircuitSignals } from '../signals/types.ts';
import { Phase } from '../signals/types.ts';
import type { Minutes } from '../units/quantities.ts';
import type { AlarmInput } from './alarm-rule.ts';

/** What the alarm would have been fed at each sample, NaN where nothing is known. Throws for a probe that is not there. */
export function alarmInputOf({ circuit, usable, log }: CircuitSignals, input: AlarmInput): Float64Array {
  if (typeof input === 'object') {
    const probe = circuit.probes.find(({ point }) => point === input.probe);
    if (probe === undefined) throw new RangeError(`Circuit ${circuit.id} has no probe ${input.probe}.`);
    return probe.record.values;
  }
  const chosen = circuit.probes.filter((_, i) => usable[i]).map(({ record }) => record.values);
  const combined = new Float64Array(log.grid.count);
  for (let i = 0; i < combined.length; i++) {
    let sum = 0;
    let known = 0;
    let highest = Number.NaN;
    for (const values of chosen) {
      const value = values[i]!;
      if (Number.isNaN(value)) continue;
      sum += value;
      known++;
      if (!(value <= highest)) highest = value;
    }
    combined[i] = input === 'average' ? sum / known : highest;
  }
  return combined;
}

/** 1 at each sample at which the alarm does not listen: in a defrost and `afterMinutes` beyond it. */
export function lockOutOf(
  { phase, defrosts, log }: CircuitSignals,
  afterMinutes: Minutes | null,
): Uint8Array {
  const locked = new Uint8Array(log.grid.count);
  if (afterMinutes === null) return locked;
  const after = afterMinutes > 0 ? samplesIn(log.grid, afterMinutes) : 0;
  for (const { from, to } of defrosts) locked.fill(1, from, to + after);
  for (let i = 0; i < phase.length; i++) if (phase[i] === Phase.defrost) locked[i] = 1;
  return locked;
}
