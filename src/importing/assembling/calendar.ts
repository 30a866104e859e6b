import { type Calendar, type Grid, type LocalDay, timeAt } from '../../model/grid.ts';
import type { EpochMs } from '../../units/quantities.ts';
import {
  localTimeKind,
  offsetMinutesAt,
  utcFromLocal,
  type ZoneTransitions,
  zoneTransitions,
} from '../time/zone.ts';

const hourMs = 3_600_000;
const dayMs = 24 * hourMs;

/** Local days and offsets over the grid, from the zone's transitions. */
export function calendarOf(grid: Grid, timeZone: string): Calendar {
  const lastMs = timeAt(grid, grid.count - 1);
  const transitions = zoneTransitions(timeZone, grid.startMs - dayMs, lastMs + dayMs);
  const sampleAt = (ms: number): number =>
    Math.min(grid.count, Math.max(0, Math.ceil((ms - grid.startMs) / grid.stepMs)));

  const offsets: { from: number; offsetMinutes: number }[] = [
    { from: 0, offsetMinutes: offsetMinutesAt(transitions, grid.startMs) },
  ];
  for (const change of transitions.starts) {
    if (change <= grid.startMs || change > lastMs) continue;
    offsets.push({ from: sampleAt(change), offsetMinutes: offsetMinutesAt(transitions, change) });
  }

  const days: LocalDay[] = [];
  const firstLocal = grid.startMs + offsetMinutesAt(transitions, grid.startMs) * 60_000;
  for (let localMidnight = Math.floor(firstLocal / dayMs) * dayMs; ; localMidnight += dayMs) {
    const begins = firstInstantOf(transitions, localMidnight);
    const ends = firstInstantOf(transitions, localMidnight + dayMs);
    if (begins > lastMs) break;
    const from = sampleAt(begins);
    const to = sampleAt(ends);
    if (to <= from) continue;
    const date = new Date(localMidnight);
    days.push({
      date: date.toISOString().slice(0, 10),
      weekday: date.getUTCDay(),
      from,
      to,
      hours: (ends - begins) / hourMs,
    });
  }
  return { timeZone, days, offsets };
}

/** Local midnight; the first of two, or one o'clock where clocks are put forward at midnight. */
function firstInstantOf(transitions: ZoneTransitions, localMidnight: number): EpochMs {
  const skipped = localTimeKind(transitions, localMidnight) === 'never';
  return utcFromLocal(transitions, localMidnight, skipped ? 'later' : 'earlier');
}
