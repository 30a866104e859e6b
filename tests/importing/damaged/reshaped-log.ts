import { header, isoTime, type PlainRow, partsOf, plainCell, plainRows, two, written } from './plain-log.ts';
import type { SameLog } from './same-log.ts';

/** The plain log in layouts that are not one time and its values a row. */

const rows = plainRows();
const lines = (...parts: readonly string[]): string => `${parts.join('\n')}\n`;
const cellsOf = ({ cells }: PlainRow): string => cells.map(plainCell).join(',');
const clockOf = ({ wallMs }: PlainRow): string => isoTime(wallMs).slice(11, 16);
const dayOf = ({ wallMs }: PlainRow): string => isoTime(wallMs).slice(0, 10);
const isMidnight = ({ wallMs }: PlainRow): boolean => wallMs % 86_400_000 === 0;
const log = (name: string, content: () => string): SameLog => ({ name, content });
const changed = (name: string, changeLines: (lines: string[]) => string[]): SameLog =>
  log(name, () => written({ changeLines }));

interface Reading {
  readonly row: PlainRow;
  readonly column: number;
  readonly value: string;
}
const readings = rows.flatMap((row) =>
  row.cells.flatMap((cell, column): Reading[] =>
    cell === null ? [] : [{ row, column, value: String(cell) }],
  ),
);
const long = (head: string, write: (reading: Reading, index: number) => string): string =>
  lines(head, ...readings.map(write));
const block = (column: number, ...head: readonly string[]): string =>
  lines(
    ...head,
    ...readings
      .filter((each) => each.column === column)
      .map(({ row, value }) => `${isoTime(row.wallMs)},${value}`),
    '',
  );
const sideBySide = (spacer = ''): string =>
  lines(
    header.map((name) => `Time,${name}`).join(`,${spacer}`),
    ...rows.map(({ wallMs, cells }) =>
      cells.map((cell) => `${isoTime(wallMs)},${plainCell(cell)}`).join(`,${spacer}`),
    ),
  );

export const blocks: readonly SameLog[] = [
  log('blocks side by side, each with its times', () => sideBySide()),
  log('blocks side by side with a column between them', () => sideBySide(',')),
  log('blocks side by side whose times differ from row to row', () =>
    lines(
      header.map((name) => `Time,${name}`).join(','),
      ...Array.from({ length: rows.length + header.length }, (_, at) =>
        header
          .map((_name, column) => {
            const row = rows[at - column];
            return row === undefined ? ',' : `${isoTime(row.wallMs)},${plainCell(row.cells[column]!)}`;
          })
          .join(','),
      ),
    ),
  ),
  log('blocks side by side with the name over “Time,Value”', () =>
    lines(
      header.map((name) => `${name},`).join(','),
      header.map(() => 'Time,Value').join(','),
      ...sideBySide().trimEnd().split('\n').slice(1),
    ),
  ),
  log('two blocks of several channels side by side', () =>
    lines(
      `Time,${header.slice(0, 4).join(',')},Time,${header.slice(4).join(',')}`,
      ...rows.map(({ wallMs, cells }) => {
        const shown = cells.map(plainCell);
        return [isoTime(wallMs), ...shown.slice(0, 4), isoTime(wallMs), ...shown.slice(4)].join(',');
      }),
    ),
  ),
  log('blocks below each other under a line with the name', () =>
    header.map((name, column) => block(column, name, 'Time,Value')).join(''),
  ),
  log('blocks below each other under “Point: name”', () =>
    header.map((name, column) => block(column, `Point: ${name}`, 'Time,Value')).join(''),
  ),
  log('blocks below each other with a header of their own', () =>
    header.map((name, column) => block(column, `Time,${name}`)).join(''),
  ),
  log('turned on its side', () =>
    lines(
      ['Point', ...rows.map(({ wallMs }) => isoTime(wallMs))].join(','),
      ...header.map((name, column) =>
        [name, ...rows.map(({ cells }) => plainCell(cells[column]!))].join(','),
      ),
    ),
  ),
];

export const groups: readonly SameLog[] = [
  log('long, with the time once over each group', () =>
    long(
      'time,point,value',
      ({ row, column, value }) => `${column === 0 ? isoTime(row.wallMs) : ''},${header[column]},${value}`,
    ),
  ),
  log('long, with numbers and states in two columns', () =>
    long(
      'time,point,value,state',
      ({ row, column, value }) =>
        `${isoTime(row.wallMs)},${header[column]},${/^[A-Z]/u.test(value) ? `,${value}` : `${value},`}`,
    ),
  ),
  log('long, with decimal commas that nothing quotes', () =>
    long(
      'time,point,value',
      ({ row, column, value }) => `${isoTime(row.wallMs)},${header[column]},${value.replace('.', ',')}`,
    ),
  ),
  log('dates on lines of their own', () =>
    lines(
      `Time,${header.join(',')}`,
      ...rows.flatMap((row) => {
        const line = `${clockOf(row)},${cellsOf(row)}`;
        return isMidnight(row) ? [dayOf(row), line] : [line];
      }),
    ),
  ),
  log('a date in words and a header over each day', () =>
    lines(
      ...rows.flatMap((row) => {
        const line = `${clockOf(row)},${cellsOf(row)}`;
        const { month, day, year } = partsOf(row.wallMs);
        return isMidnight(row)
          ? ['', `Date: ${month}/${day}/${year}`, `Time,${header.join(',')}`, line]
          : [line];
      }),
    ),
  ),
  log('one date above a table that passes midnight', () =>
    lines(
      'Date:,2026-09-03',
      `Time,${header.join(',')}`,
      ...rows.map((row) => `${clockOf(row)},${cellsOf(row)}`),
    ),
  ),
  log('a date once a day, newest first', () => {
    let before = '';
    return lines(
      `Date,Time,${header.join(',')}`,
      ...rows.toReversed().map((row) => {
        const date = dayOf(row) === before ? '' : dayOf(row);
        before = dayOf(row);
        return `${date},${clockOf(row)},${cellsOf(row)}`;
      }),
    );
  }),
];

const inTimeColumns = (name: string, timeHeader: string, time: (wallMs: number) => string): SameLog =>
  log(name, () => written({ timeHeader, time }));
const dayOfYear = (wallMs: number): number => Math.floor((wallMs - Date.UTC(2026, 0, 1)) / 86_400_000) + 1;

export const splitStamps: readonly SameLog[] = [
  inTimeColumns('year, month, day, hour and minute', 'Year,Month,Day,Hour,Minute', (wallMs) => {
    const { year, month, day, hour, minute } = partsOf(wallMs);
    return [year, month, day, hour, minute].join(',');
  }),
  inTimeColumns('year, day of the year and time as a number', 'Year,DOY,HHMM', (wallMs) => {
    const { year, hour, minute } = partsOf(wallMs);
    return `${year},${dayOfYear(wallMs)},${hour * 100 + minute}`;
  }),
  inTimeColumns('date, hour and minute', 'Date,Hour,Minute', (wallMs) => {
    const { hour, minute } = partsOf(wallMs);
    return `${isoTime(wallMs).slice(0, 10)},${hour},${minute}`;
  }),
  inTimeColumns('date, clock and AM or PM', 'Date,Time,AM/PM', (wallMs) => {
    const { month, day, hour, minute } = partsOf(wallMs);
    return `${month}/${day}/2026,${hour % 12 === 0 ? 12 : hour % 12}:${two(minute)}:00,${hour < 12 ? 'AM' : 'PM'}`;
  }),
  inTimeColumns('date and time as one number each', 'Date,Time', (wallMs) =>
    isoTime(wallMs).replaceAll(/[-:]/gu, '').replace(' ', ','),
  ),
  inTimeColumns('days and fractions of a day of a spreadsheet', 'Date,Time', (wallMs) => {
    const days = wallMs / 86_400_000 + 25_569;
    return `${Math.floor(days)},${(days % 1).toFixed(9)}`;
  }),
];

export const writings: readonly SameLog[] = [
  changed('every row in quotes as a whole', (all) => all.map((line) => `"${line}"`)),
  changed('every row in quotes as a whole, its cells in doubled ones', (all) =>
    all.map((line) => `"${line.replace(/^[^,]*/u, '""$&""')}"`),
  ),
  changed('a header with semicolons over rows with commas', ([head, ...rest]) => [
    head!.replaceAll(',', ';'),
    ...rest,
  ]),
  changed('a header with commas over rows with semicolons', ([head, ...rest]) => [
    head!,
    ...rest.map((line) => line.replaceAll(',', ';')),
  ]),
  log('carets between cells', () => written({ delimiter: '^' })),
  log('tildes between cells', () => written({ delimiter: '~' })),
  changed('curly quotes', (all) =>
    all.map((line) =>
      line
        .split(',')
        .map((cell) => `“${cell}”`)
        .join(','),
    ),
  ),
  changed('the marks of a forwarded mail', (all) => all.map((line) => `> ${line}`)),
  changed('200 empty columns behind', (all) => all.map((line) => line + ','.repeat(200))),
  changed('least, greatest and mean between header and readings', ([head, ...rest]) => [
    head!,
    'Min,30.1,31,36,,,45,34',
    'Max,50,51,36,,,48,42',
    'Avg,36,37,36,,,46,38',
    ...rest,
  ]),
  changed('decimal commas that nothing quotes, decimals in every number but the set point', (all) => [
    all[0]!,
    ...all.slice(1).map((line) =>
      line
        .split(',')
        .map((cell, at) =>
          at > 0 && at !== 3 && /^\d/u.test(cell)
            ? Number(cell)
                .toFixed(at === 6 ? 2 : 1)
                .replace('.', ',')
            : cell,
        )
        .join(','),
    ),
  ]),
];
