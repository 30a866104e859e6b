import { median } from '../maths/median.ts';
import { actionLimit } from '../model/air-limit.ts';
import type { Evidence } from '../model/evidence.ts';
import type { Projection } from '../model/finding.ts';
import type { Celsius } from '../units/quantities.ts';
import { featuresOf, type Trouble } from './trouble.ts';

const lastDays = 3;
/** Within this time a daily median says when a level was passed. */
const passedWithinMs = 1.5 * 86_400_000;

/**
 * How the settled air of a warm place stands to its limit by the last three days: a rise that came at once, or has
 * levelled off, has no date and may be there all the same. Null where it has no limit, went cold, or is over.
 */
export function standingToLimit(trouble: Trouble): Projection | null {
  const { circuit, group, lead, scope } = trouble;
  const isChanged = lead.shape === 'set-point-changed';
  if (circuit === null || lead.end !== null) return null;
  if (!isChanged && !['one-probe', 'whole-circuit'].includes(scope)) return null;
  if (lead.shape === 'constant' || lead.shape === 'duty' || movedCold(trouble)) return null;
  const setPoint = isChanged ? valueBefore(lead) : median(circuit.setPoint);
  const limit = actionLimit(circuit.circuit, group?.group ?? null, setPoint);
  if (limit === null) return null;
  const days = placeOf(trouble);
  const levelNow = median(days.filter(Number.isFinite).slice(-lastDays));
  if (!Number.isFinite(levelNow)) return null;
  const stand = { limit: limit.value, limitSource: limit.source, levelNow };
  if (levelNow < limit.value) {
    const reason = lead.shape === 'step' ? 'it came at once and stands below' : 'no reliable date';
    return { ...stand, at: null, earliest: null, latest: null, reason };
  }
  const passed = firstDayAbove(days, limit.value);
  const { grid, calendar } = circuit.log;
  const day = calendar.days[passed]!;
  const at = grid.startMs + ((day.from + day.to) / 2) * grid.stepMs;
  return { ...stand, at, earliest: at - passedWithinMs, latest: at + passedWithinMs, reason: null };
}

function movedCold(trouble: Trouble): boolean {
  const features = featuresOf(trouble);
  return (features.shift ?? features.rise ?? features.setPointChange ?? 0) < 0;
}

/** A limit is held against what the case was meant to keep, and not against what somebody made of it. */
function valueBefore({ measures }: Evidence): Celsius {
  return measures.find(({ name }) => name === 'setPointBefore')?.value ?? Number.NaN;
}

/** Daily settled air of the probe it is about, else the middle one of the circuit, Celsius. */
function placeOf({ circuit, lead }: Trouble): Float64Array {
  const { probes, level } = circuit!;
  const named = circuit!.circuit.probes.findIndex(({ point }) => point === lead.probe);
  if (named >= 0) return probes[named]!.median;
  return level.map((_, day) => median(probes.map((probe) => probe.median[day]!)));
}

/** The first day from which on no known day stands below. */
function firstDayAbove(days: Float64Array, limit: number): number {
  let first = days.length - 1;
  while (first > 0 && !(days[first - 1]! < limit)) first--;
  return first;
}
