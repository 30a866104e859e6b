import type { SampleRange } from '../exposure/exposure.ts';
import { stepMinutes } from '../model/grid.ts';
import type { CircuitSignals } from '../signals/types.ts';
import { Phase } from '../signals/types.ts';

const halfOpen = 0.5;

/** Duty and openings an hour in settled air; NaN and null where no (on/off) valve is logged. */
export function valveMonth(
  { circuit: { valve }, phase, log }: CircuitSignals,
  { from, to }: SampleRange,
): { readonly duty: number; readonly startsPerHour: number | null } {
  if (valve === null) return { duty: Number.NaN, startsPerHour: null };
  let fed = 0;
  let known = 0;
  let starts = 0;
  for (let i = from; i < to; i++) {
    const opening = valve.values[i]!;
    if (phase[i] !== Phase.cooling || Number.isNaN(opening)) continue;
    known++;
    fed += opening;
    if (opening > halfOpen && i > 0 && valve.values[i - 1]! <= halfOpen) starts++;
  }
  const isSwitched = valve.quantity === 'status' && known > 0;
  return {
    duty: fed / known,
    startsPerHour: isSwitched ? starts / ((known * stepMinutes(log.grid)) / 60) : null,
  };
}
