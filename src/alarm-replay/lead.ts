import type { Finding } from '../model/finding.ts';
import { timeAt } from '../model/grid.ts';
import type { Log } from '../model/log.ts';
import type { EpochMs } from '../units/quantities.ts';
import type { AlarmHistory } from './replay-circuit.ts';

/** A trip that was over this long before the onset belongs to something else. */
const relatedMs = 3 * 86_400_000;

/** How an alarm stands to a finding. `days` counts from the onset to the trip: negative where the alarm was first. */
export type Lead =
  | { readonly order: 'alarm-first' | 'alarm-later'; readonly trip: EpochMs; readonly days: number }
  /** It never came between the onset and the end of the finding or of the record, `days` long. */
  | { readonly order: 'never'; readonly trip: null; readonly days: number };

/**
 * The first trip that has to do with the finding, against the onset that the history shows. An onset is found with
 * hindsight: that the alarm came later does not say that the finding could have been told on the day of its onset.
 */
export function leadOver(history: AlarmHistory, finding: Finding, log: Log): Lead {
  const { grid } = log;
  const recordEnd = timeAt(grid, grid.count);
  const end = finding.end ?? recordEnd;
  for (const { from, to } of history.trips) {
    const trip = timeAt(grid, from);
    if (trip >= end) break;
    if (to !== null && timeAt(grid, to) < finding.onset - relatedMs) continue;
    const days = (trip - finding.onset) / 86_400_000;
    return { order: days < 0 ? 'alarm-first' : 'alarm-later', trip, days };
  }
  return { order: 'never', trip: null, days: (end - finding.onset) / 86_400_000 };
}
