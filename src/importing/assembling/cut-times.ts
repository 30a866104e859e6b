import type { EpochMs } from '../../units/quantities.ts';
import { ImportRefusal } from '../readings.ts';
import { utcFromLocal, zoneTransitions } from '../time/zone.ts';

const dayMs = 86_400_000;
const withOffset = /(?:Z|[+-]\d{2}:?\d{2})$/i;
const localTime = /^(\d{4})-(\d{2})-(\d{2})(?:[T ](\d{2}):(\d{2})(?::(\d{2}))?)?$/;

/**
 * The instant that `--from`, `--to` or `--serviced` names: with an offset as it stands, else wall-clock time of
 * the site. A bare date is its first instant, or with `endOfDay` its last millisecond.
 */
export function instantFrom(text: string, timeZone: string, option: string, endOfDay = false): EpochMs {
  const trimmed = text.trim();
  if (withOffset.test(trimmed) && trimmed.length > 10) {
    const instant = Date.parse(trimmed.replace(' ', 'T'));
    if (!Number.isNaN(instant)) return instant;
  }
  const local = localMilliseconds(trimmed);
  if (local === null) {
    throw new ImportRefusal(
      'time-not-understood',
      `${option} ${text}: give a date or time like 2026-09-01, 2026-09-01T06:00 or 2026-09-01T06:00-06:00.`,
    );
  }
  const transitions = zoneTransitions(timeZone, local - dayMs, local + 2 * dayMs);
  if (endOfDay && trimmed.length === 10) return utcFromLocal(transitions, local + dayMs, 'earlier') - 1;
  return utcFromLocal(transitions, local, 'earlier');
}

function localMilliseconds(text: string): number | null {
  const parts = localTime.exec(text);
  if (parts === null) return null;
  const [year, month, day, hour, minute, second] = parts.slice(1).map((part) => Number(part ?? 0));
  const milliseconds = Date.UTC(year!, month! - 1, day!, hour!, minute!, second!);
  const date = new Date(milliseconds);
  const real = date.getUTCMonth() === month! - 1 && date.getUTCDate() === day! && hour! < 24 && minute! < 60;
  return real ? milliseconds : null;
}
