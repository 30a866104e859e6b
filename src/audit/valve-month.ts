import { valveUse } from '../figures/valve-use.ts';
import { stepMinutes } from '../model/grid.ts';
import type { CircuitSignals } from '../signals/types.ts';
import type { Month } from './month.ts';

/** Duty and openings an hour in settled air; NaN and null where no (on/off) valve is logged. */
export function valveMonth(
  { circuit: { valve }, phase, log }: CircuitSignals,
  { days }: Month,
): { readonly duty: number; readonly startsPerHour: number | null } {
  if (valve === null) return { duty: Number.NaN, startsPerHour: null };
  let known = 0;
  let fed = 0;
  let starts = 0;
  for (const d of days) {
    const { from, to } = log.calendar.days[d]!;
    const use = valveUse(valve.values, phase, from, to);
    known += use.known;
    fed += use.fed;
    starts += use.starts;
  }
  const isSwitched = valve.quantity === 'status' && known > 0;
  return {
    duty: fed / known,
    startsPerHour: isSwitched ? starts / ((known * stepMinutes(log.grid)) / 60) : null,
  };
}
