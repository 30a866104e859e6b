import { header, isoTime, plainCell, plainRows, type Writing, written } from './plain-log.ts';

/** A copy of the plain log that cannot be repaired whole: what is left out is named, the rest is as in the plain one. */
export interface ToldLog {
  readonly name: string;
  readonly content: () => string | Uint8Array;
  /** Codes that the report must carry, and nothing that leaves readings out besides. */
  readonly codes: readonly string[];
  /** Readings of the plain log that are missing, counted. */
  readonly lost: number;
  /** Line that the first of `codes` must name. */
  readonly line?: number;
}

type Cell = NonNullable<Writing['cell']>;
const told = (
  name: string,
  codes: readonly string[],
  lost: number,
  writing: Writing,
  line?: number,
): ToldLog => ({
  name,
  content: () => written(writing),
  codes,
  lost,
  ...(line === undefined ? {} : { line }),
});
const inRows =
  (from: number, to: number, column: number, change: (value: number) => string): Cell =>
  (value, row, at) =>
    at === column && row >= from && row < to && value !== null ? change(Number(value)) : plainCell(value);
const atLine = (at: number, change: (line: string) => string | string[]) => (lines: string[]) =>
  lines.flatMap((line, index) => (index === at ? change(line) : [line]));
const filled = (row: number): number => plainRows()[row]!.cells.filter((cell) => cell !== null).length;
const present = (from: number, to: number, column: number): number =>
  plainRows()
    .slice(from, to)
    .filter(({ cells }) => cells[column] !== null).length;

export const rows: readonly ToldLog[] = [
  told(
    'a row without its last cells',
    ['row-too-short'],
    filled(99),
    { changeLines: atLine(100, (line) => line.split(',').slice(0, 6).join(',')) },
    101,
  ),
  told(
    'a row with a delimiter too many',
    ['row-too-long'],
    filled(99),
    { changeLines: atLine(100, (line) => line.replace('.', ',')) },
    101,
  ),
  {
    name: 'a last line cut off in the middle',
    content: () => written().slice(0, -24),
    codes: ['row-too-short'],
    lost: filled(863),
    line: 865,
  },
  told(
    'a date that does not exist',
    ['time-unreadable'],
    filled(99),
    { changeLines: atLine(100, (line) => line.replace('2026-09-03', '2026-09-31')) },
    101,
  ),
  told(
    'an hour that does not exist',
    ['time-unreadable'],
    filled(99),
    { changeLines: atLine(100, (line) => line.replace(/ \d\d:/u, ' 27:')) },
    101,
  ),
  told(
    'a row without its time',
    ['time-missing'],
    filled(99),
    { changeLines: atLine(100, (line) => line.slice(line.indexOf(','))) },
    101,
  ),
  told(
    'a remark in the middle',
    ['row-not-data'],
    0,
    { changeLines: atLine(100, (line) => ['Controller restarted', line]) },
    101,
  ),
  told(
    'remarks with several cells in the middle',
    ['row-not-data'],
    0,
    { changeLines: atLine(100, (line) => ['Note,door left open', 'Note,door shut', line]) },
    101,
  ),
  told(
    'a clock that was reset to 2000',
    ['time-implausible'],
    filled(99) + filled(100),
    {
      time: (wallMs) =>
        wallMs === plainRows()[99]!.wallMs || wallMs === plainRows()[100]!.wallMs
          ? isoTime(wallMs).replace('2026', '2000')
          : isoTime(wallMs),
    },
    101,
  ),
  told(
    'a quotation mark that is never closed',
    ['quote-unclosed'],
    0,
    { changeLines: atLine(100, (line) => line.replace(/,(\d)/u, ',"$1')) },
    101,
  ),
  told('rows of one time with other values', ['row-in-conflict'], 0, {
    changeLines: atLine(100, (line) => [line.replace(/,\d+\.?\d*/u, ',11.1'), line]),
  }),
];

export const cells: readonly ToldLog[] = [
  told(
    'Off in a column of numbers',
    ['state-word-in-number-column'],
    present(10, 20, 0),
    { cell: inRows(10, 20, 0, () => 'Off') },
    12,
  ),
  told('Def in a column of numbers', ['state-word-in-number-column'], present(10, 20, 1), {
    cell: inRows(10, 20, 1, () => 'Def'),
  }),
  told('Fail in a column of numbers', ['fault-word'], 10, { cell: inRows(10, 20, 0, () => 'Fail') }, 12),
  told('--- in a column of numbers', ['missing-word'], 10, { cell: inRows(10, 20, 0, () => '---') }, 12),
  told(
    'NaN and null',
    ['missing-word'],
    10,
    { cell: inRows(10, 20, 0, (value) => (value > 36 ? 'NaN' : 'null')) },
    12,
  ),
  told('#N/A and #VALUE! of a spreadsheet', ['fault-word', 'missing-word'], 20, {
    cell: (value, row, column) =>
      column !== 0 || row < 10 || row >= 30 ? plainCell(value) : row < 20 ? '#N/A' : '#VALUE!',
  }),
  told('a word that nobody knows', ['value-unreadable'], 1, { cell: inRows(10, 11, 0, () => 'bananas') }, 12),
  told('a number of 400 digits', ['value-overflow'], 1, { cell: inRows(10, 11, 0, () => '1e999') }, 12),
  told('-40 for an open probe', ['probe-rail'], 30, { cell: inRows(200, 230, 0, () => '-40') }, 202),
  told('327.67 for a broken probe', ['probe-rail'], 30, { cell: inRows(200, 230, 0, () => '327.67') }, 202),
  told('999 in bursts', ['probe-rail'], 20, {
    cell: (value, row, column) => (column === 0 && row % 40 === 0 && row < 800 ? '999' : plainCell(value)),
  }),
  told('-99999 once', ['probe-rail'], 1, { cell: inRows(200, 201, 5, () => '-99999') }, 202),
  told(
    'a constant that is in no list',
    ['probe-rail'],
    30,
    { cell: inRows(200, 230, 0, () => '-61.3') },
    202,
  ),
  told('a channel that is not connected', ['not-connected'], 864, { cell: inRows(0, 864, 0, () => '-40.0') }),
  told('a channel of 32767', ['not-connected'], 864, { cell: inRows(0, 864, 5, () => '32767') }),
  told(
    '°F that become °C without a word',
    ['unit-change-suspected'],
    864 - 500,
    { cell: inRows(500, 864, 0, (value) => ((value - 32) / 1.8).toFixed(1)) },
    502,
  ),
  told('a number in a column of states', ['number-in-state-column'], 1, {
    cell: (value, row, column) => (column === 3 && row === 50 ? '7' : plainCell(value)),
  }),
];

export const untouched: readonly ToldLog[] = [
  told(
    'a gap of a day',
    ['gap'],
    plainRows()
      .slice(288, 576)
      .reduce((sum, { cells: each }) => sum + each.filter((cell) => cell !== null).length, 0),
    {
      changeLines: (lines) => lines.filter((_, index) => index < 289 || index >= 577),
    },
  ),
  told('duplicate names', ['name-repeated'], 0, { headers: [...header.slice(0, 6), 'S1 suction (psig)'] }),
  told('an empty name', [], 0, { headers: [...header.slice(0, 6), ''] }),
];
