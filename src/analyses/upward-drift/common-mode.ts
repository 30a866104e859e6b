import { median } from '../../maths/median.ts';
import type { CircuitSignals, GroupSignals, Signals } from '../../signals/types.ts';

const fewestOthers = 2;
const fewestBaselineDays = 5;

/**
 * What the other circuits did on each day, K against their own baseline: those of the suction group where at least
 * two can be asked, else all others of the site. NaN throughout where fewer than two can.
 */
export function commonMode(signals: CircuitSignals, group: GroupSignals | null, site: Signals): Float64Array {
  const peers = group?.peers.get(signals.circuit.id);
  if (peers?.some(Number.isFinite)) return peers;
  const others = site.circuits.filter((other) => other !== signals).map(departure);
  return signals.level.map((_, day) => {
    const known = others.map((other) => other[day]!).filter(Number.isFinite);
    return known.length >= fewestOthers ? median(known) : Number.NaN;
  });
}

function departure(other: CircuitSignals): Float64Array {
  const level = levelAtOneSetPoint(other);
  const known = level.filter(Number.isFinite);
  const baseline = median(known.subarray(0, Math.max(fewestBaselineDays, Math.ceil(known.length / 3))));
  return level.map((value) => value - baseline);
}

/** The daily level with those set-point steps taken out that nothing logged; the day of a step is unknown. */
export function levelAtOneSetPoint(signals: CircuitSignals): Float64Array {
  const level = Float64Array.from(signals.level);
  for (const step of signals.setPointSteps) {
    if (step.source === 'column') continue;
    signals.log.calendar.days.forEach((day, d) => {
      if (day.from >= step.at) level[d]! -= step.to - step.from;
      else if (day.to > step.at) level[d] = Number.NaN;
    });
  }
  return level;
}

/** A series with the common mode taken out; left as it is on days on which nobody else can be asked. */
export function withoutCommon(days: Float64Array, common: Float64Array): Float64Array {
  return days.map((value, day) => value - (Number.isFinite(common[day]!) ? common[day]! : 0));
}
