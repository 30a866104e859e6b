import { type FoundHeader, findHeader } from '../header/find-header.ts';
import { namedByLegend } from '../header/legend.ts';
import { looksLikeHeader } from '../header/looks-like-header.ts';
import { unitInHeader, unitNamed } from '../header/unit-words.ts';
import { readCell } from '../values/cell-reader.ts';
import { visibleText } from '../values/clean-text.ts';
import { type CellType, cellType } from './cell-types.ts';
import { findLongColumns, valueWords } from './long-columns.ts';
import { findReshaping } from './reshaping/find-reshaping.ts';
import type { PlanHints, Reshaping } from './reshaping/reshaping.ts';
import type { SampleRow, TablePlan, TimeColumn, ValueColumn } from './table-plan.ts';
import { findTimeColumn, numericTimeMs, offsetInHeader, type TypeOf } from './time-column.ts';

/** Share of the rows from the first reading on that must be readings for a window to be a table. */
const dataShare = 0.4;

/** A plan, and the rows that it counts in. */
export interface PlannedTable<Row extends SampleRow> {
  readonly plan: TablePlan;
  readonly rows: readonly Row[];
}

/** Rows beyond which no other way of writing a table is looked for. */
const mostReshapedRows = 1000;

/**
 * The table in the first rows of a stretch, or null where nothing holds times. Throws ImportRefusal where its numbers
 * are cut in a way that cannot be mended.
 */
export function planTable<Row extends SampleRow>(
  rows: readonly Row[],
  hints: PlanHints,
): PlannedTable<Row> | null {
  const typeOf = typesOf(rows);
  const plan = planAsWritten(rows, typeOf);
  if (rows.length <= mostReshapedRows) {
    const reshaping = findReshaping({ rows, typeOf }, plan, hints);
    if (reshaping !== null) {
      const again = reshapedRows(rows, reshaping);
      const reshaped = planAsWritten(again, typesOf(again));
      if (reshaped !== null) return { plan: { ...reshaped, reshaping }, rows: again };
    }
  }
  return plan === null ? null : { plan: titledPlan(plan, rows, hints.titleAbove), rows };
}

const titleWords = /^(?:point|channel|sensor|probe|tag|name|log|trend|kanal|messstelle|sonde)\s*[:=]\s*/iu;

/** A table of times and one `Value` under a line with a name: the value is that of the point so named. */
function titledPlan(plan: TablePlan, rows: readonly SampleRow[], titleAbove: string): TablePlan {
  const { columns, header, headerRow, long } = plan;
  const [only, another] = columns;
  if (long !== null || header === null || headerRow === null || only === undefined || another !== undefined)
    return plan;
  if (!valueWords.test(only.name)) return plan;
  const above = (rows[headerRow - 1]?.cells ?? [titleAbove]).map(visibleText).filter((cell) => cell !== '');
  const title = above.length === 1 ? above[0]!.replace(titleWords, '') : '';
  if (!/\p{L}/u.test(title) || title.length > 80) return plan;
  const unit = only.unit ?? unitInHeader(title);
  const column = {
    ...only,
    name: title,
    unit,
    unitSource: only.unitSource ?? (unit === null ? null : 'header'),
  };
  return { ...plan, header: header.with(only.at, title), columns: [column as ValueColumn] };
}

function reshapedRows<Row extends SampleRow>(
  rows: readonly Row[],
  { headerRow, header, begin }: Reshaping,
): Row[] {
  const reshape = begin();
  return [
    ...rows.slice(0, headerRow),
    { ...rows[headerRow]!, cells: header },
    ...rows.slice(headerRow + 1).flatMap((row) => reshape(row.cells).map((cells) => ({ ...row, cells }))),
  ];
}

function typesOf(rows: readonly SampleRow[]): TypeOf {
  const types = new Map<number, CellType>();
  return (row, column) => {
    const key = row * 100_000 + column;
    let type = types.get(key);
    if (type === undefined) {
      type = cellType(rows[row]!.cells[column] ?? '');
      types.set(key, type);
    }
    return type;
  };
}

function planAsWritten(rows: readonly SampleRow[], typeOf: TypeOf): TablePlan | null {
  const time = findTimeColumn(rows, typeOf);
  if (time === null) return null;
  const isData = rows.map((row, index) => holdsTime(row, index, time, typeOf));
  const end = endOfFirst(rows, isData);
  if (end < rows.length) {
    const first = planAsWritten(rows.slice(0, end), typeOf);
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
    (type === 'stamp' || type === 'date' || (time.dateOnceADay !== null && type === 'empty')) &&
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
  const written =
    findHeader(rows, firstDataRow, dataWidth, time.at, typeOf) ??
    findHeader(rows, firstDataRow, widthInUse(dataRows, dataWidth, typeOf), time.at, typeOf) ??
    headerInOtherDelimiter(rows, firstDataRow, dataWidth, time.at);
  const header = written === null ? null : namedByLegend(written, rows, time.at);
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
  if (long !== null) {
    const used = [...long.point, long.value, long.unit, long.quality];
    for (const at of rest) {
      if (!used.includes(at) && stats[at]!.filled > 0)
        ignored.push({
          at,
          name: nameOf(at),
          why: 'each row is one reading, and its value stands in another column',
        });
    }
  }
  const columns = rest.map((at): ValueColumn => {
    const fromRow =
      header?.units?.[at] === undefined ? null : unitNamed(header.units[at]!.replace(/^[[(]|[\])]$/gu, ''));
    const fromName = unitInHeader(nameOf(at));
    const unit = fromRow ?? fromName;
    const unitSource = unit === null ? null : fromRow !== null ? 'units-row' : 'header';
    return { at, name: nameOf(at), unit, unitSource, otherUnit: fromName === unit ? null : fromName };
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
    namesLeftOut: header?.leftOut ?? null,
    columns,
    long,
    ignored,
    reshaping: null,
  };
}

/** Up to the last cell that any row fills. */
function widthInUse(dataRows: readonly number[], width: number, typeOf: TypeOf): number {
  let used = width;
  while (used > 2 && dataRows.every((row) => typeOf(row, used - 1) === 'empty')) used--;
  return used;
}

/** A header that was written with another delimiter than the rows. */
function headerInOtherDelimiter(
  rows: readonly SampleRow[],
  firstDataRow: number,
  width: number,
  timeAt: number,
): FoundHeader | null {
  const above = rows[firstDataRow - 1];
  if (above === undefined || above.cells.length !== 1) return null;
  for (const delimiter of [',', ';', '\t', '|']) {
    const cells = above.cells[0]!.split(delimiter);
    if (cells.length !== width) continue;
    const split = [...rows.slice(0, firstDataRow - 1), { ...above, cells }];
    return findHeader(split, firstDataRow, width, timeAt, typesOf(split));
  }
  return null;
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
