import { formatNumber, unknownText } from './format-number.ts';
import type { EpochMs, Minutes } from './quantities.ts';

const minutesPerDay = 1440;

function counted(count: number, decimals: number, word: string): string {
  const text = formatNumber(count, decimals);
  return `${text} ${word}${text === '1' ? '' : 's'}`;
}

/** A length of time as it is said on site: `40 seconds`, `45 minutes`, `2 h 40 min`, `3.2 days`, `12 days`. */
export function formatMinutes(minutes: Minutes): string {
  if (!Number.isFinite(minutes)) return unknownText;
  if (minutes < 0) return `-${formatMinutes(-minutes)}`;
  if (minutes < 0.99) return counted(Math.round(minutes * 60), 0, 'second');
  const whole = Math.round(minutes);
  if (whole < 120) return counted(whole, 0, 'minute');
  if (whole < 2 * minutesPerDay) {
    const rest = whole % 60;
    return rest === 0 ? `${whole / 60} h` : `${Math.floor(whole / 60)} h ${rest} min`;
  }
  return formatDays(minutes / minutesPerDay);
}

/** `3.2 days`, `12 days`. */
export function formatDays(days: number): string {
  if (!Number.isFinite(days)) return unknownText;
  return counted(days, Math.abs(days) < 9.95 && !Number.isInteger(days) ? 1 : 0, 'day');
}

/** Local time laid over a grid: any `Log` is one. `offsets` hold from sample `from` on. */
export interface LocalClock {
  readonly grid: { readonly startMs: EpochMs; readonly stepMs: number };
  readonly calendar: {
    readonly offsets: readonly { readonly from: number; readonly offsetMinutes: number }[];
  };
}

/** Offset from UTC in minutes at any time; before the first sample as at the first, after the last as at the last. */
export function offsetMinutesAt(time: EpochMs, clock: LocalClock): number {
  const sample = (time - clock.grid.startMs) / clock.grid.stepMs;
  let offset = clock.calendar.offsets[0]?.offsetMinutes ?? 0;
  for (const segment of clock.calendar.offsets) {
    if (segment.from > sample) break;
    offset = segment.offsetMinutes;
  }
  return offset;
}

function localIso(time: EpochMs, clock: LocalClock): string | null {
  const local = new Date(time + offsetMinutesAt(time, clock) * 60_000);
  return Number.isNaN(local.getTime()) ? null : local.toISOString();
}

/** `2026-09-12 14:30` on the site's own clock. */
export function formatLocalTime(time: EpochMs, clock: LocalClock): string {
  return localIso(time, clock)?.slice(0, 16).replace('T', ' ') ?? unknownText;
}

/** `2026-09-12` on the site's own clock. */
export function formatLocalDate(time: EpochMs, clock: LocalClock): string {
  return localIso(time, clock)?.slice(0, 10) ?? unknownText;
}

const weekdays = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'] as const;
const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

/** `Fri 11 Sep` on the site's own clock. */
export function formatDay(time: EpochMs, clock: LocalClock): string {
  const local = new Date(time + offsetMinutesAt(time, clock) * 60_000);
  if (Number.isNaN(local.getTime())) return unknownText;
  return `${weekdays[local.getUTCDay()]} ${local.getUTCDate()} ${months[local.getUTCMonth()]}`;
}

/** `Fri 11 Sep, 04:00` on the site's own clock. */
export function formatDayAndTime(time: EpochMs, clock: LocalClock): string {
  const iso = localIso(time, clock);
  return iso === null ? unknownText : `${formatDay(time, clock)}, ${iso.slice(11, 16)}`;
}

/** RFC 3339 with the site's offset: `2026-09-12T14:30:00-05:00`; null for a time that is none. */
export function localTimestamp(time: EpochMs, clock: LocalClock): string | null {
  const iso = localIso(time, clock);
  if (iso === null) return null;
  const offset = offsetMinutesAt(time, clock);
  const whole = Math.abs(offset);
  const hours = String(Math.floor(whole / 60)).padStart(2, '0');
  const minutes = String(whole % 60).padStart(2, '0');
  return `${iso.slice(0, 19)}${offset < 0 ? '-' : '+'}${hours}:${minutes}`;
}
