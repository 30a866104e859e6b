import { columnNames } from '../header/column-names.ts';
import { cellType } from '../layout/cell-types.ts';
import { LongTable } from '../layout/long-table.ts';
import { planTable } from '../layout/plan-table.ts';
import type { TablePlan } from '../layout/table-plan.ts';
import { timeWords } from '../layout/time-column.ts';
import { WideTable } from '../layout/wide-table.ts';
import type { FileContext } from './file-context.ts';
import { linesBetween, type PlacedRow, placedRows, smallWindow } from './sample-rows.ts';

export type Table = WideTable | LongTable;

/** Rows looked at in turn until a table is found. */
export const searchWindows: readonly number[] = [smallWindow, 120, 1000, 20_000];
const fewestBytesAhead = 65_536;
const mostBytesAhead = 4_194_304;
const mostFailedSearches = 50;
const farthestHeaderBelow = 3;
const mostTables = 1000;
/** Rows of a fruitless search that are looked at again with the next ones. */
const rowsKept = 400;
/** Rows by which it is told why no table was found. */
const rowsExplained = 120;

/**
 * The tables of one file, one below the other, met while its bytes stream past: looks for a table, reads its
 * rows, and looks again where a row seems to be the header of another.
 */
export class TableSequence {
  readonly tables: Table[] = [];
  line = 1;
  private readonly context: FileContext;
  private readonly bytesExpected: number | null;
  private current: Table | null = null;
  private searching = true;
  private failedSearches = 0;
  private passedLines = 0;
  private bytesWanted = fewestBytesAhead;
  /** Rows of a text in which no table was found. */
  fruitless: readonly PlacedRow[] = [];

  constructor(context: FileContext, bytesExpected: number | null) {
    this.context = context;
    this.bytesExpected = bytesExpected;
  }

  /** Takes what it can of the whole rows in `bytes[from, end)`; gives the position of the first byte not taken. */
  take(bytes: Uint8Array, from: number, end: number, atEnd: boolean): number {
    let at = from;
    while (at < end) {
      if (this.searching) {
        if (!atEnd && end - at < this.bytesWanted) return at;
        const found = this.search(bytes, at, end, atEnd);
        if (found < 0) return at;
        at = found;
        continue;
      }
      const table = this.current!;
      const next = table.read(bytes, at, end, this.line, atEnd);
      this.line = table.line;
      at = next;
      if (table.stop === 'more-bytes') return at;
      if (table.stop === 'header-like') {
        this.searching = true;
        this.bytesWanted = fewestBytesAhead;
      }
    }
    return at;
  }

  /** Looks for a table at `from`; the position to go on from, or -1 where more bytes are needed. */
  private search(bytes: Uint8Array, from: number, end: number, atEnd: boolean): number {
    const belowTable = this.current !== null;
    const hopeless = belowTable && this.failedSearches >= mostFailedSearches;
    if (!hopeless) {
      for (const limit of belowTable ? searchWindows.slice(0, 1) : searchWindows) {
        const rows = placedRows(bytes, from, end, this.line, this.context.dialect, atEnd, limit);
        const planned = planTable(rows, {
          ...this.context.planHints,
          titleAbove: this.current?.titleAbove ?? '',
        });
        if (planned !== null && (!belowTable || this.isAnother(planned.plan)))
          return this.begin(planned.plan, planned.rows);
        if (rows.length < limit && limit > smallWindow) break;
        if (limit === searchWindows.at(-1) && !belowTable) return this.passMany(rows);
      }
    }
    if (belowTable) return this.passOne(bytes, from, end, atEnd);
    if (!atEnd && end - from < mostBytesAhead) {
      // Looking again is worth it only with much more to see.
      this.bytesWanted = 2 * (end - from);
      return -1;
    }
    if (this.fruitless.length === 0)
      this.fruitless = placedRows(bytes, from, end, this.line, this.context.dialect, atEnd, rowsExplained);
    const lines = linesBetween(bytes, from, end);
    this.line += lines;
    this.passedLines += lines;
    return end;
  }

  /** Whether a plan found below a table is that of another one, and not of a remark above more of its rows. */
  private isAnother(plan: TablePlan): boolean {
    if (!isNearby(plan) || this.tables.length >= mostTables) return false;
    const { header, time } = this.current!.plan;
    const name = plan.header?.[plan.time.at] ?? '';
    return timeWords.test(name) || (header !== null && name !== '' && header[time.at] === name);
  }

  /** A window full of rows without a table: all but its last rows are passed over. */
  private passMany(rows: readonly PlacedRow[]): number {
    const next = rows[rows.length - rowsKept]!;
    this.passedLines += rows.length - rowsKept;
    this.line = next.line;
    return next.from;
  }

  /** The row below the table was no header: it is left out and the table goes on. */
  private passOne(bytes: Uint8Array, from: number, end: number, atEnd: boolean): number {
    this.failedSearches++;
    this.searching = false;
    const rows = placedRows(bytes, from, end, this.line, this.context.dialect, atEnd, 2);
    const first = rows[0];
    if (first === undefined) {
      this.line += linesBetween(bytes, from, end);
      return end;
    }
    this.current!.passStrayRow(first.cells, first.line);
    const next = rows[1];
    if (next === undefined) {
      this.line += linesBetween(bytes, from, end);
      return end;
    }
    this.line = next.line;
    return next.from;
  }

  private begin(plan: TablePlan, rows: readonly PlacedRow[]): number {
    const { issues } = this.context;
    const first = rows[firstReadingRow(plan, rows)]!;
    const headerLine = plan.headerRow === null ? null : rows[plan.headerRow]!.line;
    const above = (plan.headerRow ?? plan.firstDataRow) + this.passedLines;
    const again = this.tables.find((table) => continues(table.plan, plan));
    if (this.tables.length === 0 && above > 0) {
      issues.add('preamble', { line: rows[0]!.line, count: above, example: rows[0]!.cells.join(' ').trim() });
    } else if (this.tables.length > 0) {
      issues.add(again === undefined ? 'second-table' : 'header-repeated', { line: headerLine });
    }
    if (plan.headerRow === null) issues.add('header-missing', { line: first.line });
    if (plan.time.dateOnceADay !== null) {
      issues.choose(
        'date of rows without one',
        'that of the row above',
        'only the first row of each day carries a date, and the times run one way below it',
        null,
      );
    }
    if (plan.reshaping !== null) {
      const { about, chosen, because, override } = plan.reshaping.choice;
      issues.choose(about, chosen, because, override);
    }
    this.current = again ?? this.newTable(plan, headerLine, rows);
    this.searching = false;
    this.line = first.line;
    return first.from;
  }

  private newTable(plan: TablePlan, headerLine: number | null, rows: readonly PlacedRow[]): Table {
    const { issues } = this.context;
    const order = this.tables.reduce(
      (count, table) => count + (table instanceof WideTable ? table.tallies.length : table.points.length),
      0,
    );
    for (const { at, name, why } of plan.ignored) {
      issues.choose(`column ${at + 1}${name === '' ? '' : ` (“${name}”)`}`, 'left out', why, null);
    }
    if (plan.namesLeftOut !== null) {
      const shown = plan.columns
        .slice(0, 3)
        .map(({ name }) => name)
        .join(', ');
      const { cells, because } = plan.namesLeftOut;
      const example = cells
        .filter((_, at) => plan.columns.some((column) => column.at === at))
        .slice(0, 3)
        .join(', ');
      issues.choose('names of the columns', `“${shown} …” and not “${example} …”`, because, null);
    }
    for (const { name, unit, otherUnit } of plan.columns) {
      if (otherUnit === null) continue;
      issues.choose(
        `unit of “${name}”`,
        unit!,
        `the units row says so, though the name says ${otherUnit}`,
        null,
      );
    }
    const { headerOffset } = plan.time;
    if (headerOffset !== null) {
      const shown =
        headerOffset === 0 ? 'UTC' : `UTC${headerOffset < 0 ? '-' : '+'}${Math.abs(headerOffset) / 60}`;
      issues.choose('zone of the time stamps', shown, 'the header of the time column says so', null);
    }
    let table: Table;
    if (plan.long !== null) table = new LongTable(plan, plan.long, this.context, order);
    else {
      const names = columnNames(
        plan.header,
        plan.width,
        new Set(plan.columns.map(({ at }) => at)),
        headerLine,
        issues,
      );
      table = new WideTable(
        plan,
        this.context,
        names,
        order,
        this.tables.length === 0 ? this.rowsExpected(plan, rows) : 0,
      );
    }
    this.tables.push(table);
    return table;
  }

  /** Rows that the file will have, from its size and the length of the first rows; 0 where it cannot be told. */
  private rowsExpected(plan: TablePlan, rows: readonly PlacedRow[]): number {
    const first = rows[plan.firstDataRow]!;
    const last = rows.at(-1)!;
    const seen = rows.length - 1 - plan.firstDataRow;
    if (this.bytesExpected === null || seen < 5) return 0;
    return Math.ceil((this.bytesExpected / ((last.from - first.from) / seen)) * 1.03) + 16;
  }
}

/** The first row below the header that holds readings, though its time may be damaged: the table counts it. */
function firstReadingRow(
  { headerRow, firstDataRow, time, width }: TablePlan,
  rows: readonly PlacedRow[],
): number {
  let first = firstDataRow;
  if (headerRow === null) return first;
  const isDamaged = ({ cells }: PlacedRow): boolean =>
    cells.length * 2 > width &&
    /^\W*\d/u.test(cells[time.at] ?? '') &&
    cells.some((cell, at) => at !== time.at && /^(?:number|word)$/u.test(cellType(cell)));
  while (first > headerRow + 1 && isDamaged(rows[first - 1]!)) first--;
  return first;
}

function isNearby(plan: TablePlan): boolean {
  return (
    plan.headerRow !== null &&
    plan.headerRow <= farthestHeaderBelow &&
    plan.firstDataRow <= plan.headerRow + 3
  );
}

/** Whether a table found further down is the same one going on. */
function continues(before: TablePlan, now: TablePlan): boolean {
  return (
    before.width === now.width &&
    before.time.at === now.time.at &&
    before.time.clockAt === now.time.clockAt &&
    before.time.kind === now.time.kind &&
    before.reshaping?.kind === now.reshaping?.kind &&
    JSON.stringify([before.header, before.long, before.columns]) ===
      JSON.stringify([now.header, now.long, now.columns])
  );
}
