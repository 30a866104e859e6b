import { findHeader } from '../header/find-header.ts';
import { looksLikeHeader } from '../header/looks-like-header.ts';
import { unitInHeader, unitNamed } from '../header/unit-words.ts';
import { readCell } from '../values/cell-reader.ts';
import { visibleText } from '../values/clean-text.ts';
import { type CellType, cellType } from './cell-types.ts';
import { findLongColumns } from './long-columns.ts';
import type { SampleRow, TablePlan, TimeColumn, ValueColumn } from './table-plan.ts';
import { findTimeColumn, numericTimeMs, offsetInHeader, type TypeOf } from './time-column.ts';

/** Share of the rows from the first reading on that must be readings for a window to be a table. */
const dataShare = 0.4;

/** The table in the first rows of a stretch, or null where no column holds times. */
export function planTable(rows: readonly SampleRow[]): TablePlan | null {
  const types = new Map<number, CellType>();
  const typeOf: TypeOf = (row, column) => {
    const key = row * 100_000 + column;
    let type = types.get(key);
    if (type === undefined) {
      type = cellType(rows[row]!.cells[column] ?? '');
      types.set(key, type);
    }
    return type;
  };
  const time = findTimeColumn(rows, typeOf);
  if (time === null) return null;
  const isData = rows.map((row, index) => holdsTime(row, index, time, typeOf));
  const end = endOfFirst(rows, isData);
  if (end < rows.length) {
    const first = planTable(rows.slice(0, end));
    if (first !== null) return first;
  }
  const width = usualWidth(rows, isData);
  const firstDataRow = firstOf(rows, isData, width);
  if (firstDataRow < 0) return null;
  return fill(rows, isData, typeOf, time, width, firstDataRow);
}

const fewestDataRows = 3;

/** Where the header of a second table follows the first one's rows; the number of rows where none does. */
function endOfFirst(rows: readonly SampleRow[], isData: readonly boolean[]): number {
  let data = 0;
  for (const [index, { cells }] of rows.entries()) {
    if (isData[index]) data++;
    else if (data >= fewestDataRows && looksLikeHeader(cells.map(visibleText))) return index;
  }
  return rows.length;
}

function holdsTime(row: SampleRow, index: number, time: TimeColumn, typeOf: TypeOf): boolean {
  if (row.cells.length < 2) return false;
  const type = typeOf(index, time.at);
  if (time.kind !== 'calendar') {
    return (
      type === 'number' &&
      !Number.isNaN(numericTimeMs(time.kind, readCell(row.cells[time.at]!, '.').value, 9))
    );
  }
  return (
    (type === 'stamp' || type === 'date' || (time.dateOnceADay && type === 'empty')) &&
    (time.clockAt === null || typeOf(index, time.clockAt) === 'clock')
  );
}

function usualWidth(rows: readonly SampleRow[], isData: readonly boolean[]): number {
  const widths = new Map<number, number>();
  rows.forEach((row, index) => {
    if (isData[index]) widths.set(row.cells.length, (widths.get(row.cells.length) ?? 0) + 1);
  });
  let usual = 0;
  let most = 0;
  for (const [width, count] of widths) {
    if (count > most || (count === most && width > usual)) [usual, most] = [width, count];
  }
  return usual;
}

function firstOf(rows: readonly SampleRow[], isData: readonly boolean[], width: number): number {
  let later = isData.filter(Boolean).length;
  for (let row = 0; row < rows.length; row++) {
    if (!isData[row]) continue;
    const blanks = rows.slice(row).filter(({ cells }) => cells.every((cell) => cell.trim() === '')).length;
    if (rows[row]!.cells.length * 2 > width && later >= dataShare * (rows.length - row - blanks)) return row;
    later--;
  }
  return -1;
}

function fill(
  rows: readonly SampleRow[],
  isData: readonly boolean[],
  typeOf: TypeOf,
  time: TimeColumn,
  dataWidth: number,
  firstDataRow: number,
): TablePlan {
  const dataRows: number[] = [];
  for (let row = firstDataRow; row < rows.length && dataRows.length < 100; row++)
    if (isData[row]) dataRows.push(row);
  const header = findHeader(rows, firstDataRow, dataWidth, time.at, typeOf);
  const short = dataRows.filter(
    (row) => rows[row]!.cells.length < Math.max(dataWidth, header?.names.length ?? 0),
  ).length;
  const trimmedRows = short > 0.2 * dataRows.length && dataRows.length >= 5;
  const longest = dataRows.reduce((most, row) => Math.max(most, rows[row]!.cells.length), 0);
  const width = trimmedRows
    ? Math.max(header?.names.length ?? 0, header === null ? longest : dataWidth)
    : dataWidth;
  const cleared = widthWithoutTrail(rows, dataRows, header?.names ?? null, width, typeOf);
  const names = header?.names ?? null;
  const stats = columnStats(rows, dataRows, typeOf, cleared);
  const nameOf = (at: number): string => names?.[at] ?? '';
  const ignored: { at: number; name: string; why: string }[] = [];
  const rest: number[] = [];
  for (let at = 0; at < cleared; at++) {
    if (at === time.at || at === time.clockAt) continue;
    const why = passedOver(stats[at]!, nameOf(at), at < time.at);
    if (why !== null) ignored.push({ at, name: nameOf(at), why });
    else rest.push(at);
  }
  const long = findLongColumns(rest, nameOf, stats, stats[time.at]!);
  const columns = rest.map((at): ValueColumn => {
    const fromRow =
      header?.units?.[at] === undefined ? null : unitNamed(header.units[at]!.replace(/^[[(]|[\])]$/gu, ''));
    const fromName = fromRow ?? unitInHeader(nameOf(at));
    const unitSource = fromName === null ? null : fromRow !== null ? 'units-row' : 'header';
    return { at, name: nameOf(at), unit: fromName, unitSource };
  });
  const timeNames = [time.at, time.clockAt ?? time.at].map(nameOf);
  const headerOffset = offsetInHeader(timeNames[0]!) ?? offsetInHeader(timeNames[1]!);
  return {
    time: { ...time, headerOffset },
    width: cleared,
    trimmedRows,
    firstDataRow,
    header: names,
    headerRow: header?.row ?? null,
    columns,
    long,
    ignored,
  };
}

/** Leaves out empty cells at the end of every row that no header names (a trailing delimiter). */
function widthWithoutTrail(
  rows: readonly SampleRow[],
  dataRows: readonly number[],
  names: readonly string[] | null,
  width: number,
  typeOf: TypeOf,
): number {
  let least = width;
  while (least > 2 && (names?.[least - 1] ?? '') === '') {
    const at = least - 1;
    if (dataRows.some((row) => (rows[row]!.cells[at] ?? '') !== '' && typeOf(row, at) !== 'empty')) break;
    if (names !== null && names.length >= least) break;
    least--;
  }
  return least;
}

/** What the sample's rows hold in one column. */
export interface ColumnStats {
  readonly counts: { readonly [type in CellType]: number };
  readonly filled: number;
  readonly texts: ReadonlySet<string>;
  /** Every number is one more than the one before. */
  readonly countsRows: boolean;
}

function columnStats(
  rows: readonly SampleRow[],
  dataRows: readonly number[],
  typeOf: TypeOf,
  width: number,
): ColumnStats[] {
  const stats: ColumnStats[] = [];
  for (let at = 0; at < width; at++) {
    const counts = { empty: 0, stamp: 0, date: 0, clock: 0, number: 0, word: 0, unit: 0, text: 0 };
    const texts = new Set<string>();
    let before = Number.NaN;
    let steps = 0;
    for (const row of dataRows) {
      const cell = rows[row]!.cells[at] ?? '';
      const type = typeOf(row, at);
      counts[type]++;
      if (type !== 'empty' && texts.size < (type === 'number' ? 8 : 500)) texts.add(cell.trim());
      if (type !== 'number') continue;
      const value = Number(cell);
      if (value === before + 1) steps++;
      before = value;
    }
    const filled = dataRows.length - counts.empty;
    stats.push({ counts, filled, texts, countsRows: dataRows.length > 2 && steps === dataRows.length - 1 });
  }
  return stats;
}

function passedOver(stats: ColumnStats, name: string, beforeTime: boolean): string | null {
  const { counts, filled } = stats;
  if (filled > 0 && (counts.stamp + counts.date + counts.clock) * 2 > filled) return 'it holds further times';
  if (
    beforeTime &&
    stats.countsRows &&
    /^(?:|#|no\.?|nr\.?|index|row|zeile|record|id|line|seq|unnamed: ?0)$/iu.test(name)
  ) {
    return 'it counts the rows';
  }
  return null;
}
