import { dayMs } from '../time/civil.ts';
import { TimeReader } from '../time/time-reader.ts';
import { readCell } from '../values/cell-reader.ts';
import { CarriedDate } from './carried-date.ts';
import { type CellType, readTimeText } from './cell-types.ts';
import type { SampleRow, TimeColumn, TimeColumnKind } from './table-plan.ts';

/** Words in the header of a time column. */
export const timeWords =
  /time|date|stamp|epoch|unix|^ts$|datum|zeit|heure|hora|fecha|horodat|tijd|ora\b|serial|tidspunkt|clock/iu;

/** Types of the cells of a sample, worked out once each. */
export type TypeOf = (row: number, column: number) => CellType;

interface Tally {
  readonly column: number;
  stamps: number;
  dates: number;
  clocks: number;
  numbers: number;
}

/** The column (or pair of columns) that holds the times of most rows, or null. */
export function findTimeColumn(rows: readonly SampleRow[], typeOf: TypeOf): TimeColumn | null {
  const widest = rows.reduce((most, row) => Math.max(most, row.cells.length), 0);
  const tallies: Tally[] = [];
  for (let column = 0; column < widest; column++) {
    if (column >= 24 && column < widest - 4) continue;
    const tally = { column, stamps: 0, dates: 0, clocks: 0, numbers: 0 };
    for (let row = 0; row < rows.length; row++) {
      if (column >= rows[row]!.cells.length) continue;
      const type = typeOf(row, column);
      if (type === 'stamp') tally.stamps++;
      else if (type === 'date') tally.dates++;
      else if (type === 'clock') tally.clocks++;
      else if (type === 'number') tally.numbers++;
    }
    tallies.push(tally);
  }
  const written = mostOf(tallies, (tally) => tally.stamps + tally.dates);
  const clock = mostOf(tallies, (tally) => tally.clocks);
  const numeric = numericTime(rows, tallies, clock);
  if (written === null || (numeric !== null && numeric.rows > written.stamps + written.dates)) {
    return numeric?.column ?? null;
  }
  const paired =
    clock !== null &&
    clock.column !== written.column &&
    clock.clocks * 2 >= written.stamps + written.dates &&
    (written.dates > written.stamps || allAtMidnight(rows, written.column));
  const clockAt = paired ? clock.column : null;
  const isOnceADay = (newestFirst: boolean): boolean =>
    clockAt !== null && isDateOnceADay(rows, written.column, clockAt, typeOf, newestFirst);
  const dateOnceADay = isOnceADay(false) ? 'oldest-first' : isOnceADay(true) ? 'newest-first' : null;
  return { at: written.column, clockAt, kind: 'calendar', dateOnceADay, headerOffset: null };
}

/** Most rows have an empty date, and the clock runs on (or back) from each date to the next. */
function isDateOnceADay(
  rows: readonly SampleRow[],
  dateAt: number,
  clockAt: number,
  typeOf: TypeOf,
  newestFirst: boolean,
): boolean {
  const reader = new TimeReader(null);
  const carried = new CarriedDate(newestFirst);
  let dated = 0;
  let undated = 0;
  for (const [row, { cells }] of rows.entries()) {
    if (typeOf(row, clockAt) !== 'clock') continue;
    const type = typeOf(row, dateAt);
    if (type === 'date') dated++;
    else if (type === 'empty') undated++;
    else return false;
    const written = type === 'date' ? cells[dateAt]! : '';
    if (carried.of(written, readTimeText(reader, cells[clockAt]!)) === '') return false;
  }
  return dated > 0 && undated > dated;
}

function mostOf(tallies: readonly Tally[], count: (tally: Tally) => number): Tally | null {
  let best: Tally | null = null;
  for (const tally of tallies) if (count(tally) > (best === null ? 0 : count(best))) best = tally;
  return best;
}

function allAtMidnight(rows: readonly SampleRow[], column: number): boolean {
  const reader = new TimeReader(null);
  return rows.every(({ cells }) => {
    const wall = readTimeText(reader, cells[column] ?? '');
    return Number.isNaN(wall) || wall % dayMs === 0;
  });
}

/** Numbers of a column in the order of the rows. */
function numbersOf(rows: readonly SampleRow[], column: number): number[] {
  return rows
    .map(({ cells }) => readCell(cells[column] ?? '', '.').value)
    .filter((value) => !Number.isNaN(value));
}

const rowsTried = 64;

/**
 * Whether rows spread over all hold numbers that a count of days or more could reach: nine in ten must in the end. A long
 * text without a table is passed over by this.
 */
function mayCountTime(rows: readonly SampleRow[], column: number): boolean {
  const every = Math.max(1, Math.floor(rows.length / rowsTried));
  const tried = numbersOf(
    rows.filter((_, row) => row % every === 0),
    column,
  );
  return tried.filter((value) => value >= serialDays.from).length * 2 >= tried.length;
}

function numericTime(
  rows: readonly SampleRow[],
  tallies: readonly Tally[],
  clock: Tally | null,
): { column: TimeColumn; rows: number } | null {
  for (const { column, numbers } of tallies) {
    if (numbers === 0 || numbers * 2 < rows.length) continue;
    const named = rows.slice(0, 60).some(({ cells }) => {
      const cell = cells[column] ?? '';
      return cell.length < 60 && timeWords.test(cell);
    });
    if ((!named && column !== 0) || !mayCountTime(rows, column)) continue;
    const values = numbersOf(rows, column);
    const kind = numericKind(values, named, column === 0);
    if (kind === null) continue;
    const clocked = kind === 'serial' && clock !== null && clock.clocks * 2 >= numbers;
    const clockAt = clocked && values.every(Number.isInteger) ? clock.column : null;
    const time = { at: column, clockAt, kind, dateOnceADay: null, headerOffset: null };
    return { column: time, rows: numbers };
  }
  return null;
}

/** 1990 to 2100 in seconds; days of 1982 to 2119 for spreadsheets. */
export const unixSeconds = { from: 6.3e8, to: 4.11e9 };
const serialDays = { from: 30_000, to: 80_000 };

/** Milliseconds since 1970 on the clock that a numeric time counts; NaN outside what is plausible. */
export function numericTimeMs(kind: TimeColumnKind, value: number, decimals: number): number {
  if (kind === 'serial') {
    if (!(value >= serialDays.from && value <= serialDays.to)) return Number.NaN;
    return roundedToClock((value - 25_569) * dayMs, (dayMs / 2) * 10 ** -decimals);
  }
  const perSecond = kind === 'unix-s' ? 1 : kind === 'unix-ms' ? 1e3 : kind === 'unix-us' ? 1e6 : 1e9;
  const seconds = value / perSecond;
  if (!(seconds >= unixSeconds.from && seconds <= unixSeconds.to)) return Number.NaN;
  return Math.round((value / perSecond) * 1000);
}

/** A count has few decimals, so its time is only known to within `half`: the roundest time inside is meant. */
export function roundedToClock(ms: number, half: number): number {
  for (const step of [60_000, 1000]) {
    const round = Math.round(ms / step) * step;
    if (Math.abs(round - ms) <= Math.min(half, step / 2) + 0.5) return round;
  }
  return Math.round(ms);
}

function numericKind(values: readonly number[], named: boolean, first: boolean): TimeColumnKind | null {
  const share = (from: number, to: number) =>
    values.filter((v) => v >= from && v <= to).length / values.length;
  const orderly = isOrderly(values);
  if (!named && !(first && orderly)) return null;
  for (const [kind, scale] of [
    ['unix-s', 1],
    ['unix-ms', 1e3],
    ['unix-us', 1e6],
    ['unix-ns', 1e9],
  ] as const) {
    if (share(unixSeconds.from * scale, unixSeconds.to * scale) >= 0.9) return kind;
  }
  const fractional = values.some((value) => !Number.isInteger(value));
  if (share(serialDays.from, serialDays.to) >= 0.9 && (named || fractional) && orderly) return 'serial';
  return null;
}

/** Runs one way nearly throughout, as times do. */
function isOrderly(values: readonly number[]): boolean {
  let up = 0;
  let down = 0;
  for (let at = 1; at < values.length; at++) {
    if (values[at]! > values[at - 1]!) up++;
    else if (values[at]! < values[at - 1]!) down++;
  }
  return Math.min(up, down) <= 0.05 * values.length;
}

/** Minutes from UTC that a header states for its stamps: `Time (UTC)`, `UTC time`, `Zeit GMT+2`; null for none. */
export function offsetInHeader(header: string): number | null {
  const found = /(?<![a-z])(?:utc|gmt|zulu)(?![a-z])\s*(?:([-+\u2212])\s?(\d{1,2})(?::?(\d{2}))?)?/iu.exec(
    header.slice(0, 80),
  );
  if (found === null) return null;
  const [, sign, hours, minutes] = found;
  if (sign === undefined) return 0;
  return (sign === '+' ? 1 : -1) * (Number(hours) * 60 + Number(minutes ?? 0));
}
