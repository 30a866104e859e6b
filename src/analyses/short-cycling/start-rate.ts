import { knownCount } from '../../maths/known-count.ts';
import type { Calendar, Grid } from '../../model/grid.ts';
import { samplesIn } from '../../model/grid.ts';
import type { EpochMs } from '../../units/quantities.ts';

const hourMs = 3_600_000;
/** An hour or a day with less of its record than this is not counted. */
const leastCoverage = 0.8;

export interface StartRate {
  /** Starts in each hour from the start of the log, NaN where the record has gaps. */
  readonly hours: Float64Array;
  /** Mean of the known hours of each day, NaN with fewer than a quarter of them. */
  readonly days: Float64Array;
}

/** @param values of the record of the machine; null where it is known throughout */
export function startRate(
  starts: readonly EpochMs[],
  values: Float64Array | null,
  grid: Grid,
  calendar: Calendar,
): StartRate {
  const hour = samplesIn(grid, 60);
  const hours = new Float64Array(Math.ceil(grid.count / hour));
  countByHour(starts, grid.startMs, hours);
  for (let k = 0; k < hours.length; k++) {
    const from = k * hour;
    const to = Math.min(grid.count, from + hour);
    const known = values === null ? to - from : knownCount(values, from, to);
    if (known < leastCoverage * hour) hours[k] = Number.NaN;
  }
  const days = Float64Array.from(calendar.days, (day) =>
    meanOfKnown(hours, Math.round(day.from / hour), Math.round(day.to / hour), day.hours / 4),
  );
  return { hours, days };
}

function countByHour(starts: readonly EpochMs[], startMs: EpochMs, hours: Float64Array): void {
  for (let k = 0; k < starts.length; k++) {
    const at = Math.floor((starts[k]! - startMs) / hourMs);
    if (at >= 0 && at < hours.length) hours[at]!++;
  }
}

/** Mean of the known hours from one to another; NaN of fewer than `least`. */
function meanOfKnown(hours: Float64Array, from: number, to: number, least: number): number {
  const end = Math.min(hours.length, to);
  let sum = 0;
  let known = 0;
  for (let k = from; k < end; k++) {
    if (Number.isNaN(hours[k]!)) continue;
    sum += hours[k]!;
    known++;
  }
  return known < least ? Number.NaN : sum / known;
}

/** Most starts within any 60 minutes from `from` on. */
export function mostInAnHour(starts: readonly EpochMs[], from: EpochMs): number {
  let most = 0;
  let first = 0;
  for (let last = 0; last < starts.length; last++) {
    while (starts[last]! - starts[first]! >= hourMs) first++;
    if (starts[first]! >= from) most = Math.max(most, last - first + 1);
  }
  return most;
}
