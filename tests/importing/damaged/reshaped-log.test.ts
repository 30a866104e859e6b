import { beforeAll, describe, expect, it } from 'vitest';
import { codesOf, normalized, normalizedContent, onlyReport, readContent } from '../support.ts';
import { isoTime, plainRows, written } from './plain-log.ts';
import { blocks, groups, splitStamps, writings } from './reshaped-log.ts';
import type { SameLog } from './same-log.ts';
import { intervals, lostDegrees, moreTimes, moreValues } from './written-otherwise.ts';

let plain: string;
beforeAll(async () => {
  plain = await normalizedContent(written());
});

function comesOutIdentical(logs: readonly SameLog[], isChosen: boolean): void {
  it.each(logs)('$name', async ({ content }) => {
    const readings = await readContent(content());
    const text = normalized(readings);
    expect(text.slice(0, 600)).toBe(plain.slice(0, 600));
    expect(text === plain).toBe(true);
    const { values, valuesRejected, choices } = onlyReport(readings);
    expect(values - valuesRejected).toBe(plain.split('\n').length - 2);
    if (isChosen) expect(choices.length).toBeGreaterThan(0);
  });
}

describe('the same log comes out identical, and the report says how it was read', () => {
  describe('in blocks', () => comesOutIdentical(blocks.slice(0, 5), true));
  describe('in blocks below each other, and turned', () => comesOutIdentical(blocks.slice(5), false));
  describe('with times that stand over groups of rows', () => comesOutIdentical(groups, true));
  describe('with stamps in several columns', () => comesOutIdentical(splitStamps, true));
  describe('with stamps that name two times', () => comesOutIdentical(intervals, true));
});

describe('the same log comes out identical', () => {
  describe('when whole rows were changed', () => comesOutIdentical(writings, false));
  describe('with more ways to write times', () => comesOutIdentical(moreTimes, false));
  describe('with more ways to write values', () => comesOutIdentical(moreValues, false));

  it.each(lostDegrees.map((headers) => ({ headers })))('with the unit of $headers.0', async ({ headers }) => {
    const { columns } = await readContent(written({ headers }));
    expect(columns.slice(0, 3).map(({ unit }) => unit)).toEqual(['degF', 'degF', 'degF']);
  });

  it('with negative numbers in brackets, behind a blank and behind their sign', async () => {
    const rows = plainRows().map((row) => ({
      ...row,
      cells: row.cells.map((cell, at) =>
        typeof cell === 'number' && at < 3 ? Number((cell - 47.3).toFixed(1)) : cell,
      ),
    }));
    const expected = await normalizedContent(written({}, rows));
    for (const write of [
      (size: number) => `(${size})`,
      (size: number) => `- ${size}`,
      (size: number) => `${size}-`,
    ]) {
      const cell = (value: number | string | null): string =>
        typeof value === 'number' && value < 0 ? write(-value) : String(value ?? '');
      expect(await normalizedContent(written({ cell }, rows))).toBe(expected);
    }
  });

  it('with one row a time and circuit', async () => {
    const rows = plainRows();
    const wide = rows.map(({ wallMs, cells }) =>
      [isoTime(wallMs), cells[0], cells[3], cells[1] ?? '', cells[4]].join(','),
    );
    const expected = await normalizedContent(
      ['Time,M01 air (°F),M01 dfr,M02 air (°F),M02 dfr', ...wide, ''].join('\n'),
    );
    const apart = rows.flatMap(({ wallMs, cells }) =>
      ['M01', 'M02'].map(
        (circuit, at) => `${isoTime(wallMs)},${circuit},${cells[at] ?? ''},${cells[3 + at]}`,
      ),
    );
    const readings = await readContent(['Time,Circuit,air (°F),dfr', ...apart, ''].join('\n'));
    expect(normalized(readings)).toBe(expected);
    expect(onlyReport(readings).choices.map(({ chosen }) => chosen)).toContain(
      'part of the names of the points',
    );
  });
});

describe('decimal commas that nothing quotes', () => {
  const stamp = (at: number): string => isoTime(Date.UTC(2026, 8, 1) + at * 60_000);
  const file = (rows: readonly string[]): string => ['Time,A,B', ...rows, ''].join('\n');

  it('are joined where they can be in one way only, and the report says so', async () => {
    const readings = await readContent(
      file(Array.from({ length: 9 }, (_, at) => `${stamp(at)},3,${at},2,1`)),
      { zone: 'UTC' },
    );
    expect([...readings.columns[0]!.values]).toEqual([3, 3.1, 3.2, 3.3, 3.4, 3.5, 3.6, 3.7, 3.8]);
    expect([...readings.columns[1]!.values]).toEqual(new Array(9).fill(2.1));
    expect(onlyReport(readings).choices).toContainEqual(
      expect.objectContaining({ chosen: 'decimal commas in “A”, “B”', override: '--decimal-point' }),
    );
  });

  it('are not joined where the options say that commas separate cells', async () => {
    const content = file(Array.from({ length: 9 }, (_, at) => `${stamp(at)},3,${at},2,1`));
    const readings = await readContent(content, { zone: 'UTC', overrides: { decimalComma: false } });
    expect(readings.columns.map(({ point }) => point)).toEqual(['A', 'B', 'column 4', 'column 5']);
  });

  it('leave a row out, and name it, that can be joined in two ways', async () => {
    const rows = Array.from({ length: 9 }, (_, at) =>
      at === 4 ? `${stamp(at)},3,4,2` : `${stamp(at)},3,${at},2,1`,
    );
    const readings = await readContent(file(rows), { zone: 'UTC' });
    expect(onlyReport(readings)).toMatchObject({ rows: 9, rowsRejected: 1, values: 18, valuesRejected: 2 });
    expect(codesOf(readings)).toContain('row-too-long');
  });

  it('that cannot be told from those between cells refuse the file in a sentence', async () => {
    const cells = ['34,-3,5', '34,5,-6', '34,5,-3,5'];
    const rows = Array.from({ length: 30 }, (_, at) => `${stamp(at)},${cells[at % 3]}`);
    await expect(readContent(file(rows), { zone: 'UTC' })).rejects.toMatchObject({
      code: 'decimal-commas-unclear',
      message: expect.stringMatching(/^export\.csv line 2: .*Export with semicolons or with decimal points/u),
    });
  });

  it('are not seen where nothing moves that could tell', async () => {
    const rows = Array.from({ length: 40 }, (_, at) => `${stamp(at)},34,5,36`);
    const readings = await readContent(file(rows), { zone: 'UTC' });
    expect(readings.columns.map(({ point }) => point)).toEqual(['A', 'B', 'column 4']);
    expect(codesOf(readings)).toContain('name-empty');
  });

  it('are not seen in columns that have no name', async () => {
    const rows = Array.from({ length: 40 }, (_, at) => `${stamp(at)},${34 + (at % 3)},36,${at % 2}`);
    const readings = await readContent(file(rows), { zone: 'UTC' });
    expect(readings.columns.map(({ point }) => point)).toEqual(['A', 'B', 'column 4']);
  });
});
