import { describe, expect, it } from 'vitest';
import { header, isoTime, plainCell, plainRows, written } from '../damaged/plain-log.ts';
import { codesOf, normalized, normalizedContent, onlyReport, readContent } from '../support.ts';

const readings = plainRows().flatMap(({ wallMs, cells }) =>
  cells.flatMap((cell, column) =>
    cell === null ? [] : [{ stamp: `${isoTime(wallMs)},${header[column]}`, cell }],
  ),
);
const around = (cell: number | string, distance: number): string =>
  typeof cell === 'number' ? (cell + distance).toFixed(2) : '';

describe('least and greatest beside the readings of a long table are left out, and the report says so', () => {
  it.each([
    {
      head: 'time,point,avg,min,max',
      write: (cell: number | string) => `${cell},${around(cell, -1)},${around(cell, 1)}`,
    },
    {
      head: 'time,point,min,avg,max',
      write: (cell: number | string) => `${around(cell, -1)},${cell},${around(cell, 1)}`,
    },
    { head: 'time,point,last,minimum,maximum', write: (cell: number | string) => `${cell},${cell},${cell}` },
  ])('$head', async ({ head, write }) => {
    const read = await readContent(
      [head, ...readings.map(({ stamp, cell }) => `${stamp},${write(cell)}`)].join('\n'),
    );
    expect(normalized(read) === (await normalizedContent(written()))).toBe(true);
    expect(
      onlyReport(read)
        .choices.map(({ about }) => about)
        .join(),
    ).toMatch(/min.*max/u);
  });
});

describe('the quality of a value in the column behind it', () => {
  const lines = (quality: (row: number, column: number) => string): string =>
    [
      ['Time', ...header.flatMap((name) => [name, 'Status'])].join(','),
      ...plainRows().map(({ wallMs, cells }, row) =>
        [isoTime(wallMs), ...cells.flatMap((cell, column) => [plainCell(cell), quality(row, column)])].join(
          ',',
        ),
      ),
    ].join('\n');

  it('is no point of its own', async () => {
    const read = await readContent(lines(() => 'OK'));
    expect(normalized(read) === (await normalizedContent(written()))).toBe(true);
    expect(onlyReport(read).choices.map(({ chosen }) => chosen)).toContain('the quality of the value before');
  });

  it('leaves a bad value out, and counts it', async () => {
    const read = await readContent(
      lines((row, column) => (column === 0 && row >= 400 && row < 420 ? 'Bad' : 'Good')),
    );
    expect(onlyReport(read)).toMatchObject({ valuesRejected: 20 });
    expect(codesOf(read)).toContain('fault-word');
    expect(read.columns[0]!.values.filter((value) => Number.isNaN(value))).toHaveLength(20);
  });

  it.each([
    { name: 'M01 valve status', good: 'TRUE', bad: 'FALSE' },
    { name: 'Status', good: 'TRUE', bad: 'FALSE' },
    { name: 'M01 alarm status', good: 'Normal', bad: 'Normal' },
  ])('is not seen in states of another thing: $name $good', async ({ name, good, bad }) => {
    const rows = plainRows().map(({ wallMs, cells }, row) => {
      const state = row % 3 === 0 ? bad : good;
      return [isoTime(wallMs), cells[0], state, cells[5], state].join(',');
    });
    const read = await readContent(
      [`Time,M01 air (°F),${name},S1 suction (psig),${name} 2`, ...rows].join('\n'),
    );
    expect(read.columns.map(({ point }) => point)).toContain(name);
    expect(onlyReport(read).valuesRejected).toBe(0);
  });
});
