import { median } from '../../maths/median.ts';
import { settings } from './settings.ts';

export interface Narrowed {
  /** First day of the narrow swing. */
  readonly day: number;
  /** Days that it was wide in at first: `before` is that of these. */
  readonly usualDays: number;
  readonly before: number;
  readonly after: number;
}

/**
 * A swing (of air, of suction pressure) that has narrowed and stayed so: the trace that cycling faster than the
 * logging can show leaves behind. Null when it has not, or when `least`, what the record can resolve, hides it.
 */
export function narrowedSwing(days: Float64Array, least: number): Narrowed | null {
  const known = [...days.keys()].filter((day) => Number.isFinite(days[day]!));
  const third = Math.max(3, Math.ceil(known.length / 3));
  if (known.length < third + 3) return null;
  const before = median(known.slice(0, third).map((day) => days[day]!));
  const limit = settings.narrowedShare.value * before;
  if (before < least || !(median(known.slice(-3).map((day) => days[day]!)) < limit)) return null;
  let first = known.length - 1;
  while (first > 0 && days[known[first - 1]!]! < (before + limit) / 2) first--;
  if (known.length - first < settings.narrowedDays.value) return null;
  const after = median(known.slice(first).map((day) => days[day]!));
  return { day: known[first]!, usualDays: known[third - 1]! + 1, before, after };
}
