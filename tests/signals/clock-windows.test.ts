import fc from 'fast-check';
import { expect, test } from 'vitest';
import { calendarOf } from '../../src/importing/assembling/calendar.ts';
import { minuteOfDay, samplesIn } from '../../src/model/grid.ts';
import { clockWindows } from '../../src/signals/clock-windows.ts';

const hours = { night: [60, 300], trading: [600, 1200] } as const;

test('a window holds what a look at the clock every five minutes finds, also on days on which clocks change', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('UTC', 'America/Denver', 'Europe/Berlin', 'Asia/Kolkata', 'Australia/Lord_Howe'),
      fc.constantFrom('2026-03-01', '2026-03-26', '2026-06-10', '2026-10-03', '2026-10-29'),
      fc.constantFrom(10, 30, 60, 120, 300, 900, 3600),
      fc.integer({ min: 0, max: 86_399 }),
      fc.integer({ min: 1, max: 5 }),
      (zone, date, stepSeconds, into, days) => {
        const stepMs = 1000 * stepSeconds;
        const startMs = Date.parse(date) + 1000 * into;
        const grid = { startMs, stepMs, count: Math.ceil((days * 86_400_000) / stepMs) };
        const calendar = calendarOf(grid, zone);
        const step = samplesIn(grid, 5);
        clockWindows(grid, calendar).forEach((windows, d) => {
          const { from, to } = calendar.days[d]!;
          for (const name of ['night', 'trading'] as const) {
            const [opening, closing] = hours[name];
            const seen: number[] = [];
            for (let i = from; i < to; i += step) {
              const minute = minuteOfDay(grid, calendar, i);
              if (minute >= opening && minute < closing) seen.push(i);
            }
            const first = seen[0] ?? to;
            const last = seen.length === 0 ? from : Math.min(to, seen.at(-1)! + step);
            expect(windows[name]).toEqual({ from: first, to: last });
          }
        });
      },
    ),
    { numRuns: 150 },
  );
});
