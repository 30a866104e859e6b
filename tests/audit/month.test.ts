import { describe, expect, test } from 'vitest';
import { monthOf, monthSentence, monthsIn } from '../../src/audit/month.ts';
import { calendarOf } from '../../src/importing/assembling/calendar.ts';
import type { Log } from '../../src/model/log.ts';
import { handMadeLog } from '../support/hand-made-log.ts';

/** A log over hours of UTC, with the calendar of a real zone. */
function logOver(startIso: string, hours: number, timeZone: string): Log {
  const grid = { startMs: Date.parse(startIso), stepMs: 3_600_000, count: hours };
  return { ...handMadeLog({ days: 1 }), grid, calendar: calendarOf(grid, timeZone) };
}

describe('a month in the local time of the site', () => {
  test('with the autumn change has 721 hours in November in Denver, and says so', () => {
    const log = logOver('2026-11-01T06:00:00Z', 721, 'America/Denver');
    const month = monthOf(log, '2026-11')!;
    expect(month).toMatchObject({ hours: 721, daysMissing: 0 });
    expect(month.range).toEqual({ from: 0, to: 721 });
    expect(monthSentence(log, month)).toContain('721 hours');
    expect(monthSentence(log, month)).toContain('2026-11-01, a day of 25 hours');
  });

  test('with the spring change has 743 hours in March, with the autumn one 745 in October, in Berlin', () => {
    const march = logOver('2026-02-28T23:00:00Z', 743, 'Europe/Berlin');
    expect(monthOf(march, '2026-03')).toMatchObject({ hours: 743, daysMissing: 0 });
    const october = logOver('2026-09-30T22:00:00Z', 745, 'Europe/Berlin');
    expect(monthOf(october, '2026-10')).toMatchObject({ hours: 745, daysMissing: 0 });
  });

  test('begins and ends at local midnight, whatever the export holds beside it', () => {
    const log = logOver('2026-08-20T00:00:00Z', 45 * 24, 'America/Denver');
    const month = monthOf(log, '2026-09')!;
    expect(log.grid.startMs + month.range.from * 3_600_000).toBe(Date.parse('2026-09-01T06:00:00Z'));
    expect(log.grid.startMs + month.range.to * 3_600_000).toBe(Date.parse('2026-10-01T06:00:00Z'));
    expect(month.days).toHaveLength(30);
  });

  test('of which the export holds a part says how much; of which it holds nothing is none', () => {
    const log = logOver('2026-09-21T06:00:00Z', 240, 'America/Denver');
    expect(monthSentence(log, monthOf(log, '2026-09')!)).toContain('holds 10 of its 30 days');
    expect(monthOf(log, '2026-08')).toBeNull();
    expect(monthsIn(log)).toEqual(['2026-09']);
  });
});
