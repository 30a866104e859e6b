import { describe, expect, it } from 'vitest';
import { codesOf, normalized, onlyReport, readContent } from '../support.ts';

const clocks = Array.from({ length: 24 }, (_, hour) => `${String(hour).padStart(2, '0')}:00`);
/** Rows of a day; `value` tells the days apart. */
const day = (value: number): string[] => clocks.map((clock, hour) => `${clock},${value + hour / 10}`);
const dated = (date: string, rows: readonly string[], everywhere: boolean): string[] =>
  rows.map((row, at) => `${everywhere || at === 0 ? date : ''},${row}`);
const exportOf = (dates: readonly string[], everywhere = false): string[] => [
  'Date,Time,air',
  ...dates.flatMap((date, at) => dated(date, day(30 + at), everywhere)),
];
const read = (lines: readonly string[], zone = 'UTC') => readContent(`${lines.join('\n')}\n`, { zone });

describe('a date on the first row of each day only', () => {
  it.each([
    ['year first', ['2026-09-12', '2026-09-13', '2026-09-14']],
    ['a day that is known to be first only from a later date', ['11.09.2026', '12.09.2026', '13.09.2026']],
    ['with slashes', ['9/12/2026', '9/13/2026', '9/14/2026']],
  ])('is that of the rows below it, and the choice is reported: %s', async (_, dates) => {
    const readings = await read(exportOf(dates));
    expect(normalized(readings)).toBe(normalized(await read(exportOf(dates, true))));
    expect(onlyReport(readings)).toMatchObject({ rows: 72, rowsRejected: 0, values: 72, valuesRejected: 0 });
    expect(onlyReport(readings).choices).toContainEqual(
      expect.objectContaining({ about: 'date of rows without one', chosen: 'that of the row above' }),
    );
  });

  it('is carried in a long table too', async () => {
    const long = (everywhere: boolean) => [
      'Date,Time,Point,Value',
      ...['2026-09-12', '2026-09-13'].flatMap((date, at) =>
        dated(
          date,
          day(30 + at).flatMap((row) => [row.replace(',', ',M01,'), row.replace(',', ',M02,')]),
          everywhere,
        ),
      ),
    ];
    expect(normalized(await read(long(false)))).toBe(normalized(await read(long(true))));
  });

  it('runs through the hour that comes twice in autumn', async () => {
    const zone = 'America/Denver';
    const again = ['00:00,30', '01:00,31', '01:30,32', '01:00,33', '01:30,34', '02:00,35', '03:00,36'];
    const lines = (everywhere: boolean) => ['Date,Time,air', ...dated('2026-11-01', again, everywhere)];
    expect(normalized(await read(lines(false), zone))).toBe(normalized(await read(lines(true), zone)));
  });

  it('is not carried past midnight where the next date is missing or unreadable: those rows are named', async () => {
    for (const lost of ['', '2026-99-99']) {
      const readings = await read(exportOf(['2026-09-12', '2026-09-13', lost, '2026-09-15']));
      const { rows, rowsRejected } = onlyReport(readings);
      expect([rows, rowsRejected]).toEqual([96, 24]);
      expect(codesOf(readings).filter((code) => code.startsWith('time-')).length).toBeGreaterThan(0);
      expect(normalized(readings)).not.toContain('2026-09-14');
    }
  });
});
