import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Calendar, Grid, LocalDay } from '../../src/model/grid.ts';
import { runDays } from '../../src/signals/run-days.ts';
import { runThreshold } from '../../src/signals/run-threshold.ts';
import { spellsOf } from '../../src/signals/spells.ts';
import { recordOf } from '../support/hand-made-log.ts';

/** Real refrigerators of the tracebase data set (ODbL): see data/SOURCES.md. */
const file = (name: string) => readFileSync(new URL(`data/${name}`, import.meta.url), 'utf8');
const truth = JSON.parse(file('tracebase_starts.json')) as {
  [device: string]: { [day: string]: { starts: number; unambiguous: boolean } };
};

function powerHistory(device: string) {
  const rows = file(`tracebase_${device}_1min.csv`).trim().split('\n').slice(1);
  const readings = rows.map((row) => {
    const [time, power] = row.split(',') as [string, string];
    return { ms: Date.parse(`${time.replace(' ', 'T')}Z`), power: power === '' ? Number.NaN : Number(power) };
  });
  const startMs = readings[0]!.ms;
  const count = (readings.at(-1)!.ms - startMs) / 60_000 + 1;
  const values = new Float64Array(count).fill(Number.NaN);
  for (const { ms, power } of readings) values[(ms - startMs) / 60_000] = power;
  const grid: Grid = { startMs, stepMs: 60_000, count };
  const days = new Map<string, { from: number; to: number }>();
  for (let i = 0; i < count; i++) {
    const date = new Date(startMs + i * 60_000).toISOString().slice(0, 10);
    days.set(date, { from: days.get(date)?.from ?? i, to: i + 1 });
  }
  const calendar: Calendar = {
    timeZone: 'Europe/Berlin',
    days: [...days].map(([date, span]): LocalDay => ({ date, weekday: 0, hours: 24, ...span })),
    offsets: [{ from: 0, offsetMinutes: 0 }],
  };
  return { record: recordOf('compressor', 'power', values), grid, calendar };
}

describe('real refrigerators, read once a minute', () => {
  test.each(Object.keys(truth))('the starts of %s are exact on every day', (device) => {
    const { record, grid, calendar } = powerHistory(device);
    const days = runDays(spellsOf(record.values, runThreshold(record)), grid, calendar);
    const counted = Object.fromEntries(calendar.days.map(({ date }, d) => [date, days[d]!.starts]));
    const expected = Object.fromEntries(
      Object.entries(truth[device]!).map(([day, { starts }]) => [day, starts]),
    );
    expect(Object.values(truth[device]!).every((day) => day.unambiguous)).toBe(true);
    expect(counted).toEqual(expected);
  });

  test('the threshold of a run column read from power lies between idle and running', () => {
    for (const device of Object.keys(truth)) {
      const threshold = runThreshold(powerHistory(device).record);
      expect(threshold).toBeGreaterThan(15);
      expect(threshold).toBeLessThan(60);
    }
  });

  test('a run is shorter than the day and the coverage says how much of it is known', () => {
    const { record, grid, calendar } = powerHistory('B83B9E');
    const [first] = runDays(spellsOf(record.values, runThreshold(record)), grid, calendar);
    // mean run 359.1 s, 38 starts on 2012-02-01: 3.79 h
    expect(first!.runHours).toBeCloseTo(3.79, 1);
    expect(first!.shortestRunMinutes).toBeGreaterThanOrEqual(5);
    expect(first!.coverage).toBeGreaterThan(0.99);
  });
});
