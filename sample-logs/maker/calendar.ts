import type { Calendar, Grid, LocalDay } from '../../src/model/grid.ts';

/** Minutes east of UTC in a zone at an instant. */
export function zoneOffsetMinutes(timeZone: string, epochMs: number): number {
  const parts = formatter(timeZone).formatToParts(epochMs);
  const part = (type: string): number => Number(parts.find((p) => p.type === type)!.value);
  const local = Date.UTC(
    part('year'),
    part('month') - 1,
    part('day'),
    part('hour'),
    part('minute'),
    part('second'),
  );
  return Math.round((local - epochMs) / 60_000);
}

const formatters = new Map<string, Intl.DateTimeFormat>();
function formatter(timeZone: string): Intl.DateTimeFormat {
  let found = formatters.get(timeZone);
  if (found === undefined) {
    found = new Intl.DateTimeFormat('en-US', {
      timeZone,
      hourCycle: 'h23',
      year: 'numeric',
      month: 'numeric',
      day: 'numeric',
      hour: 'numeric',
      minute: 'numeric',
      second: 'numeric',
    });
    formatters.set(timeZone, found);
  }
  return found;
}

/** Local midnight of a date in a zone. */
export function localMidnight(timeZone: string, date: string): number {
  const asUtc = Date.parse(`${date}T00:00:00Z`);
  return asUtc - zoneOffsetMinutes(timeZone, asUtc) * 60_000;
}

/** Offsets in force over [startMs, endMs): the first at `startMs`, then each change, found to the hour. */
export function zoneOffsets(
  timeZone: string,
  startMs: number,
  endMs: number,
): { fromMs: number; offsetMinutes: number }[] {
  const offsets = [{ fromMs: startMs, offsetMinutes: zoneOffsetMinutes(timeZone, startMs) }];
  for (let time = startMs; time < endMs; time += 3_600_000) {
    const offsetMinutes = zoneOffsetMinutes(timeZone, time);
    if (offsetMinutes !== offsets.at(-1)!.offsetMinutes) offsets.push({ fromMs: time, offsetMinutes });
  }
  return offsets;
}

export function calendarOver(timeZone: string, grid: Grid): Calendar {
  const endMs = grid.startMs + grid.count * grid.stepMs;
  const offsets = zoneOffsets(timeZone, grid.startMs, endMs);
  const days: LocalDay[] = [];
  let segment = 0;
  for (let i = 0; i < grid.count; i++) {
    const time = grid.startMs + i * grid.stepMs;
    while (segment + 1 < offsets.length && offsets[segment + 1]!.fromMs <= time) segment++;
    const local = new Date(time + offsets[segment]!.offsetMinutes * 60_000);
    const date = local.toISOString().slice(0, 10);
    const last = days.at(-1);
    if (last?.date === date) continue;
    if (last !== undefined) days[days.length - 1] = { ...last, to: i };
    const hours = (localMidnight(timeZone, nextDate(date)) - localMidnight(timeZone, date)) / 3_600_000;
    days.push({ date, weekday: local.getUTCDay(), from: i, to: grid.count, hours });
    // Skip to an hour before the next midnight; clock changes cannot shift it further than that.
    i += Math.max(
      0,
      Math.floor((21 * 3_600_000) / grid.stepMs) -
        Math.floor((local.getTime() % 86_400_000) / grid.stepMs) -
        1,
    );
  }
  return {
    timeZone,
    days,
    offsets: offsets.map(({ fromMs, offsetMinutes }) => ({
      from: Math.round((fromMs - grid.startMs) / grid.stepMs),
      offsetMinutes,
    })),
  };
}

function nextDate(date: string): string {
  return new Date(Date.parse(`${date}T00:00:00Z`) + 86_400_000).toISOString().slice(0, 10);
}
