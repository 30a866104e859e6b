import { describe, expect, test } from 'vitest';
import { importLines } from '../../src/reporting/import-lines.ts';
import { reportOf } from './support/example.ts';

const report = reportOf();
const [file] = report.files;

describe('the account of the import', () => {
  test('counts rows, values and what was rejected, for every file', () => {
    const clean = {
      ...file!,
      name: 'clean.csv',
      rows: 1,
      rowsRejected: 0,
      values: 3,
      valuesRejected: 0,
      choices: [],
      issues: [],
    };
    const headings = importLines({ ...report, files: [file!, clean] }).map(({ heading }) => heading);
    expect(headings[0]).toBe('store.csv: 34,560 rows, 1,036,800 values, 1 row and 12 values rejected');
    expect(headings[1]).toBe('clean.csv: 1 row, 3 values, nothing rejected');
  });

  test('names each choice, its reason and the flag for the other reading', () => {
    expect(importLines(report)[0]!.details[0]).toBe(
      'dates: month first, because a 13 stands in the second place on line 1,200; otherwise --day-first',
    );
  });

  test('says once what is so in several files', () => {
    const lines = importLines({ ...report, files: [file!, { ...file!, name: 'other.csv' }] });
    expect(lines[0]!.details).toEqual([]);
    expect(lines[2]!.details[0]).toMatch(/^store\.csv and other\.csv: dates: month first/);
  });

  test.each([
    ['site', 'from the site file'],
    ['option', 'from --time-zone'],
    ['machine', "this machine's"],
    ['offsets-in-export', 'carries its own offsets'],
  ] as const)('says where the time zone came from: %s', (timeZoneSource, words) => {
    expect(importLines({ ...report, timeZoneSource }).at(-1)!.heading).toContain(words);
  });
});
