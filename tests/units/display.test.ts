import { describe, expect, test } from 'vitest';
import {
  formatDays,
  formatDifference,
  formatLocalDate,
  formatLocalTime,
  formatMinutes,
  formatPressure,
  formatPressureDifference,
  formatRate,
  formatShare,
  formatTemperature,
  localTimestamp,
} from '../../src/units/display.ts';

const american = { temperature: 'degF', pressure: 'psig' } as const;
const european = { temperature: 'degC', pressure: 'barg' } as const;

describe('numbers in the units of the site', () => {
  test('temperatures, differences and rates', () => {
    expect(formatTemperature(5, american)).toBe('41.0 °F');
    expect(formatTemperature(5, european)).toBe('5.0 °C');
    expect(formatTemperature(-0.01, european)).toBe('0.0 °C');
    expect(formatDifference(3.5 / 1.8, american)).toBe('3.5 °F');
    expect(formatRate(0.41 / 1.8, american)).toBe('0.41 °F a day');
    expect(formatDifference(2, { ...european, temperature: 'K' })).toBe('2.0 K');
  });

  test('pressures above the atmosphere of the site', () => {
    expect(formatPressure(308.1677, american, 101.325)).toBe('30.0 psig');
    expect(formatPressure(201.325, european, 101.325)).toBe('1.00 barg');
    expect(formatPressureDifference(3.5 * 6.894757293168361, american)).toBe('3.5 psi');
    expect(formatPressure(250, { ...european, pressure: 'kPa' }, 90)).toBe('250 kPa');
  });

  test('shares, and what is not known', () => {
    expect(formatShare(0.62)).toBe('62 %');
    expect(formatTemperature(Number.NaN, american)).toBe('unknown');
    expect(formatMinutes(Number.POSITIVE_INFINITY)).toBe('unknown');
  });
});

test.each([
  [0.5, '30 seconds'],
  [1, '1 minute'],
  [45.2, '45 minutes'],
  [119, '119 minutes'],
  [120, '2 h'],
  [160, '2 h 40 min'],
  [1500, '25 h'],
  [2 * 1440, '2 days'],
  [3.2 * 1440, '3.2 days'],
  [12.3 * 1440, '12 days'],
  [-45, '-45 minutes'],
])('%d minutes read "%s"', (minutes, text) => {
  expect(formatMinutes(minutes)).toBe(text);
});

test('one day is not "1 days"', () => {
  expect(formatDays(1)).toBe('1 day');
});

describe('local time by the offsets of the calendar', () => {
  const startMs = Date.UTC(2026, 9, 25, 0, 0);
  // Clocks go back at 01:00 UTC, from +2 h to +1 h: sample 60 of a one-minute grid.
  const clock = {
    grid: { startMs, stepMs: 60_000 },
    calendar: {
      offsets: [
        { from: 0, offsetMinutes: 120 },
        { from: 60, offsetMinutes: 60 },
      ],
    },
  };

  test('the repeated hour is read with its own offset', () => {
    expect(formatLocalTime(startMs + 30 * 60_000, clock)).toBe('2026-10-25 02:30');
    expect(formatLocalTime(startMs + 90 * 60_000, clock)).toBe('2026-10-25 02:30');
    expect(localTimestamp(startMs + 30 * 60_000, clock)).toBe('2026-10-25T02:30:00+02:00');
    expect(localTimestamp(startMs + 90 * 60_000, clock)).toBe('2026-10-25T02:30:00+01:00');
  });

  test('before and after the grid the nearest offset holds', () => {
    expect(formatLocalTime(startMs - 60_000, clock)).toBe('2026-10-25 01:59');
    expect(formatLocalDate(startMs + 24 * 3_600_000, clock)).toBe('2026-10-26');
  });

  test('west of Greenwich, half hours, and no time at all', () => {
    const west = { ...clock, calendar: { offsets: [{ from: 0, offsetMinutes: -210 }] } };
    expect(localTimestamp(startMs, west)).toBe('2026-10-24T20:30:00-03:30');
    expect(localTimestamp(Number.NaN, west)).toBeNull();
    expect(formatLocalTime(Number.NaN, west)).toBe('unknown');
  });
});
