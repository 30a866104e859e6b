import { describe, expect, it } from 'vitest';
import { detectDialect } from '../../../src/importing/dialect/detect-dialect.ts';
import { rowCells } from '../../../src/importing/dialect/row-cells.ts';
import { type Dialect, rowAt } from '../../../src/importing/scan/row-span.ts';

const encode = (text: string): Uint8Array => new TextEncoder().encode(text);
const delimiterOf = (text: string): string => {
  const bytes = encode(text);
  return String.fromCharCode(detectDialect(bytes, bytes.length).dialect.delimiter);
};
const rowsOf = (text: string, dialect: Dialect = { delimiter: 44, quote: 34 }): string[][] => {
  const bytes = encode(text);
  const rows: string[][] = [];
  for (let at = 0; at < bytes.length; ) {
    const row = rowAt(bytes, at, bytes.length, true, dialect)!;
    rows.push(rowCells(bytes, row, dialect));
    at = row.next;
  }
  return rows;
};

describe('delimiters', () => {
  it('are those that cut rows into equal numbers of readable cells', () => {
    expect(delimiterOf('Time,A\n2026-09-01 00:00,1.5\n2026-09-01 00:05,1.6\n')).toBe(',');
    expect(delimiterOf('Time;A;B\n01.09.2026 00:00;1,5;2,5\n01.09.2026 00:05;1,6;2,6\n')).toBe(';');
    expect(delimiterOf('Time\tA, left\tB\n2026-09-01 00:00\t1\t2\n2026-09-01 00:05\t1\t2\n')).toBe('\t');
    expect(delimiterOf('Time|A\n2026-09-01 00:00|1,5\n2026-09-01 00:05|1,6\n')).toBe('|');
    expect(delimiterOf('"Time";"A, B; C"\n"2026-09-01, 00:00";"1,5"\n"2026-09-01, 00:05";"1,6"\n')).toBe(';');
  });
});

/** Small cases after the published checks of fastcsv and csv-spectrum: the situations are theirs, the texts ours. */
describe('rows', () => {
  it.each([
    ['empty cells at both ends', ',a,\n', [['', 'a', '']]],
    ['a comma in quotes', '"a,b",c\n', [['a,b', 'c']]],
    ['a line end in quotes', '"a\nb",c\n', [['a\nb', 'c']]],
    ['quotes in quotes', '"a ""b"" c",d\n', [['a "b" c', 'd']]],
    ['an empty cell in quotes', '"",b\n', [['', 'b']]],
    ['a quote inside a bare cell', '5" probe,b\n', [['5" probe', 'b']]],
    ['a blank before a quote', 'a, "b,c"\n', [['a', 'b,c']]],
    [
      'mixed line ends',
      'a,b\r\nc,d\re,f\n',
      [
        ['a', 'b'],
        ['c', 'd'],
        ['e', 'f'],
      ],
    ],
    [
      'no final line end',
      'a,b\nc,d',
      [
        ['a', 'b'],
        ['c', 'd'],
      ],
    ],
    ['wide characters', '"°F",☃\n', [['°F', '☃']]],
    [
      'a quote that is never closed',
      '"a,b\nc,d\n',
      [
        ['a', 'b'],
        ['c', 'd'],
      ],
    ],
  ] as const)('with %s', (_name, text, expected) => expect(rowsOf(text)).toEqual(expected));

  it('count the lines that they take', () => {
    const bytes = encode('"a\r\nb\nc",d\ne\n');
    expect(rowAt(bytes, 0, bytes.length, true, { delimiter: 44, quote: 34 })).toMatchObject({
      lines: 3,
      quoted: true,
      unclosed: false,
    });
  });

  it('wait for more bytes where a quote may still be closed', () => {
    const bytes = encode('"a\n');
    expect(rowAt(bytes, 0, bytes.length, false, { delimiter: 44, quote: 34 })).toBeNull();
  });
});
