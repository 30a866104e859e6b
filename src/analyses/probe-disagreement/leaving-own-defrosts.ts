import { clearRamp } from '../../maths/fit-ramp.ts';
import { mean } from '../../maths/mean.ts';
import { median } from '../../maths/median.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import type { Kelvin } from '../../units/quantities.ts';

/** Days that the change may take: the day of an exchange holds defrosts of both kinds. */
const longestDays = 2;
/** A defrost by which its neighbours rose less than this tells nothing. */
const leastRise: Kelvin = 1;
const clarity = { leastSize: 0.15, leastScales: 4, leastScale: 0.03, leastExplained: 0.6 };

/** First whole day of it, and how far from its neighbours' rise the probe's then stands, as a share of the larger. */
export interface Leaving {
  readonly day: number;
  readonly off: number;
}

/**
 * Since when a probe no longer rises as its neighbours do in their common defrosts, or null. Each defrost gives how
 * far the two rises stand apart, as a share of the larger; the day gives their mean, whether it rises less or more and whether in all
 * of them or only in those that another circuit does not share.
 */
export function leavesOwnDefrosts(
  signals: CircuitSignals,
  probe: number,
  peers: readonly number[],
): Leaving | null {
  if (peers.length === 0) return null;
  const { days } = signals.log.calendar;
  const off: number[][] = days.map(() => []);
  let day = 0;
  for (const { from, complete, probes } of signals.defrosts) {
    while (day + 1 < days.length && days[day]!.to <= from) day++;
    const rise = (one: number): Kelvin => probes[one]!.peak - probes[one]!.before;
    const others = median(peers.map(rise));
    if (complete && others > leastRise) off[day]!.push(apart(rise(probe), others));
  }
  const daily = Float64Array.from(off, (shares) => mean(shares));
  const ramp = clearRamp(
    daily.map((_, at) => at),
    daily,
    clarity,
  );
  if (ramp === null || ramp.after <= ramp.before || ramp.end - ramp.start > longestDays) return null;
  return { day: ramp.end, off: ramp.after };
}

/** 0 for alike, 1 where one of them is not there. */
function apart(rise: Kelvin, others: Kelvin): number {
  return 1 - Math.max(0, Math.min(rise, others)) / Math.max(rise, others);
}
