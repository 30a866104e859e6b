import fc from 'fast-check';
import { expect, test } from 'vitest';
import { calendarOf } from '../../../src/importing/assembling/calendar.ts';
import { dayAt, minuteOfDay, offsetAt, timeAt } from '../../../src/model/grid.ts';

const minute = 60_000;

function gridOver(from: string, days: number, stepMinutes = 5) {
  return { startMs: Date.parse(from), stepMs: stepMinutes * minute, count: (days * 1440) / stepMinutes };
}

// The United States change their clocks on the second Sunday of March and the first of November (15 U.S.C. 260a).
test('a spring change makes a day of 23 hours, an autumn change one of 25', () => {
  const spring = calendarOf(gridOver('2026-03-07T05:00:00Z', 3), 'America/New_York');
  expect(spring.days.slice(0, 3).map(({ date, hours }) => [date, hours])).toEqual([
    ['2026-03-07', 24],
    ['2026-03-08', 23],
    ['2026-03-09', 24],
  ]);
  expect(spring.offsets.map(({ offsetMinutes }) => offsetMinutes)).toEqual([-300, -240]);
  const autumn = calendarOf(gridOver('2026-10-31T04:00:00Z', 3), 'America/New_York');
  expect(autumn.days.map(({ date, hours }) => [date, hours]).slice(0, 3)).toEqual([
    ['2026-10-31', 24],
    ['2026-11-01', 25],
    ['2026-11-02', 24],
  ]);
});

test('a month with the clock change has 743 or 745 hours', () => {
  const hours = (month: string, start: string, days: number): number =>
    calendarOf(gridOver(start, days), 'America/Chicago')
      .days.filter(({ date }) => date.startsWith(month))
      .reduce((sum, day) => sum + day.hours, 0);
  expect(hours('2026-03', '2026-03-01T06:00:00Z', 31)).toBe(743);
  expect(hours('2026-11', '2026-11-01T05:00:00Z', 31)).toBe(721);
  expect(hours('2026-10', '2026-10-01T05:00:00Z', 31)).toBe(744);
});

test('a zone where clocks are put forward at midnight begins its day at one', () => {
  // Asunción put its clocks forward at midnight of 2023-10-01 (tz database).
  const { days } = calendarOf(gridOver('2023-09-30T04:00:00Z', 3), 'America/Asuncion');
  expect(days.map(({ date, hours }) => [date, hours]).slice(0, 3)).toEqual([
    ['2023-09-30', 24],
    ['2023-10-01', 23],
    ['2023-10-02', 24],
  ]);
});

test('days cover the grid without a hole, and agree with an independent clock', () => {
  const zones = ['America/Denver', 'Europe/Berlin', 'Asia/Kolkata', 'Australia/Lord_Howe', 'UTC'];
  fc.assert(
    fc.property(
      fc.constantFrom(...zones),
      fc.integer({ min: 0, max: 700 }),
      fc.constantFrom(1, 5, 15, 60),
      fc.integer({ min: 1, max: 400 }),
      (zone, day, stepMinutes, count) => {
        const grid = { startMs: Date.UTC(2025, 0, 1 + day), stepMs: stepMinutes * minute, count };
        const calendar = calendarOf(grid, zone);
        expect(calendar.days[0]!.from).toBe(0);
        expect(calendar.days.at(-1)!.to).toBe(count);
        for (const [index, { from }] of calendar.days.entries()) {
          if (index > 0) expect(from).toBe(calendar.days[index - 1]!.to);
        }
        const clock = new Intl.DateTimeFormat('sv-SE', {
          timeZone: zone,
          dateStyle: 'short',
          timeStyle: 'short',
        });
        for (const sample of [0, count >> 1, count - 1]) {
          const [date, time] = clock.format(timeAt(grid, sample)).split(' ');
          expect(calendar.days[dayAt(calendar, sample)]!.date).toBe(date);
          const [hour, minutes] = time!.split(':').map(Number);
          expect(minuteOfDay(grid, calendar, sample)).toBe(hour! * 60 + minutes!);
          expect(Number.isFinite(offsetAt(calendar, sample))).toBe(true);
        }
      },
    ),
    { numRuns: 100 },
  );
});
