import { type Clarity, fitRamp, isClear } from '../../maths/fit-ramp.ts';
import { median } from '../../maths/median.ts';
import type { CircuitSignals, ProbeDays } from '../../signals/types.ts';
import type { DayChange } from './change-in-days.ts';

/** How long before the air a coil can show that it ices. */
const mostDaysAhead = 10;

const swingClarity: Clarity = { leastSize: 0.12, leastScales: 4, leastScale: 0.02, leastExplained: 0.6 };
const lateClarity: Clarity = { leastSize: 0.8, leastScales: 4, leastScale: 0.1, leastExplained: 0.6 };

/**
 * The day on which a creep began, when something else shows it before the level does: under a control that holds
 * the average, a coil that ices first swings less and stays cold late in defrost. Null when neither leads.
 */
export function earlyWitness(
  signals: CircuitSignals,
  probe: number,
  peers: readonly number[],
  change: DayChange,
): number | null {
  const against = (pick: (days: ProbeDays) => Float64Array, how: (own: number, others: number) => number) => {
    const others = peers.map((peer) => pick(signals.probes[peer]!));
    return pick(signals.probes[probe]!).map((own, day) =>
      how(own, median(others.map((other) => other[day]!))),
    );
  };
  const starts = [
    startOf(
      against(
        (days) => days.swing,
        (own, others) => own / others,
      ),
      change,
      swingClarity,
    ),
    startOf(
      against(
        (days) => days.lateDefrost,
        (own, others) => own - others,
      ),
      change,
      lateClarity,
    ),
  ].filter((start) => start !== null);
  return starts.length === 0 ? null : Math.min(...starts);
}

/** Where the witness falls, when it does so clearly and not too long before the change itself. */
function startOf(days: Float64Array, change: DayChange, clarity: Clarity): number | null {
  const part = days.subarray(0, change.end + 1);
  const ramp = fitRamp(
    part.map((_, day) => day),
    part,
  );
  if (ramp === null || ramp.after > ramp.before || !isClear(ramp, clarity)) return null;
  const ahead = change.start - ramp.start;
  return ahead > 0 && ahead <= mostDaysAhead ? ramp.start : null;
}
