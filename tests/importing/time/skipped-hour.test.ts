import { describe, expect, it } from 'vitest';
import { codesOf, normalized, onlyReport, readContent } from '../support.ts';

/** A logger that keeps standard time through the night of 8 March 2026: 02:00 to 02:45 do not exist in Denver. */
const clocks = [
  '01:30',
  '01:45',
  '02:00',
  '02:15',
  '02:30',
  '02:45',
  '03:00',
  '03:15',
  '03:30',
  '03:45',
  '04:00',
];
const wide = clocks.map((clock, at) => `2026-03-08 ${clock},${30 + at}`);
const long = clocks.map((clock, at) => `2026-03-08 ${clock},air,${30 + at}`);
const read = (header: string, rows: readonly string[]) =>
  readContent(`${[header, ...rows].join('\n')}\n`, { zone: 'America/Denver' });

/** What the rows that exist say, and nothing of those that do not. */
const existing = clocks.flatMap((clock, at) =>
  clock.startsWith('02')
    ? []
    : [
        `2026-03-08T${String(Number(clock.slice(0, 2)) + (at < 2 ? 7 : 6)).padStart(2, '0')}:${clock.slice(3)}:00Z,air,${30 + at},`,
      ],
);

describe('rows in the hour that clocks skip', () => {
  it.each([
    ['wide, oldest first', 'Time,air', wide],
    ['wide, newest first', 'Time,air', wide.toReversed()],
    ['long, oldest first', 'Time,Point,Value', long],
    ['long, newest first', 'Time,Point,Value', long.toReversed()],
  ])('never displace the row that owns their time, and are named: %s', async (_, header, rows) => {
    const readings = await read(header, rows);
    expect(normalized(readings).trim().split('\n').slice(1)).toEqual(existing);
    expect(codesOf(readings)).toEqual(['row-of-skipped-hour', 'skipped-hour']);
    expect(onlyReport(readings)).toMatchObject({ rows: 11, rowsRejected: 4, values: 11, valuesRejected: 4 });
  });

  it('are read where no other row has their time', async () => {
    const readings = await read('Time,air', wide.slice(0, 6));
    expect(normalized(readings)).toContain('2026-03-08T09:15:00Z,air,33,');
    expect(codesOf(readings)).toEqual(['skipped-hour']);
  });
});
