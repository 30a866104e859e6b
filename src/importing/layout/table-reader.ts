import { rowCells } from '../dialect/row-cells.ts';
import { textOf } from '../encoding/transcode.ts';
import { isUnitsRow } from '../header/find-header.ts';
import { looksLikeHeader } from '../header/looks-like-header.ts';
import type { FileContext } from '../reading/file-context.ts';
import { LineMap } from '../scan/line-map.ts';
import { afterLineEnd, rowAt } from '../scan/row-span.ts';
import { dayMs } from '../time/civil.ts';
import { type DateOrder, reorderedTime } from '../time/date-order.ts';
import type { TimeKind } from '../time/time-reader.ts';
import { readCell } from '../values/cell-reader.ts';
import { unwrapped, visibleText } from '../values/clean-text.ts';
import { NumberBytes } from '../values/number-bytes.ts';
import { CarriedDate } from './carried-date.ts';
import { readTimeText } from './cell-types.ts';
import type { Reshape } from './reshaping/reshaping.ts';
import type { TablePlan, TimeColumnKind } from './table-plan.ts';
import { numericTimeMs } from './time-column.ts';
import { countedDay, WrittenDays } from './written-days.ts';

export type Stop = 'end' | 'more-bytes' | 'header-like';

/** Rows whose stamps carry an offset, kept as the rows where that begins or ends. */
export class OffsetRuns {
  readonly toggles: number[] = [];
  private present = false;

  note(row: number, hasOffset: boolean): void {
    if (hasOffset === this.present) return;
    this.present = hasOffset;
    this.toggles.push(row);
  }
}

/**
 * Reads the rows of one table out of a buffer: plain rows byte by byte in `plainRow`, every other row as text
 * cells in `textRow`. Both must come to the same readings.
 */
export abstract class TableReader {
  readonly plan: TablePlan;
  readonly lines = new LineMap();
  readonly offsets = new OffsetRuns();
  protected readonly writtenDays = new WrittenDays();
  private readonly carriedDate: CarriedDate;
  /** From the written day and clock to the time just read; NaN where the writing fixes the date. */
  protected dayShiftMs = 0;
  /** Rows taken so far. */
  row = 0;
  line = 1;
  stop: Stop = 'end';
  /** The row just passed over, where it was a line of one cell; else empty. */
  titleAbove = '';
  protected readonly context: FileContext;
  protected readonly numbers = new NumberBytes();
  /** Decimal mark in cells without quotes and in those with, as bytes; -1 for none. */
  protected readonly plainMark: number;
  protected readonly quotedMark: number;
  private readonly reshape: Reshape | null;

  constructor(plan: TablePlan, context: FileContext) {
    this.plan = plan;
    this.context = context;
    this.quotedMark = context.cells.decimalMark === ',' ? 44 : 46;
    this.plainMark = this.quotedMark === context.dialect.delimiter ? -1 : this.quotedMark;
    this.carriedDate = new CarriedDate(plan.time.dateOnceADay === 'newest-first');
    this.reshape = plan.reshaping?.begin() ?? null;
  }

  /** Takes the row at `at` and gives the position after it; -1 where it is not plain, having taken nothing. */
  protected abstract plainRow(bytes: Uint8Array, at: number): number;
  /** Takes a row of data given as text; its time has been read. */
  protected abstract takeCells(cells: readonly string[], wallMs: number): void;
  /** Values that the cells of a row hold, for one that is left out. */
  protected abstract countValues(cells: readonly string[]): number;
  /** Changes stored times in place. */
  protected abstract changeTimes(change: (storedMs: number, row: number) => number): void;

  /** First and last time as stored so far. */
  abstract timeSpan(): { from: number; to: number };

  /** Reads stored times again in another order of day and month. */
  reorderTimes(from: DateOrder, to: DateOrder): void {
    this.changeTimes((storedMs, row) => {
      const shiftMs = this.writtenDays.shiftOf(row);
      return Number.isFinite(shiftMs) ? reorderedTime(storedMs - shiftMs, from, to) + shiftMs : storedMs;
    });
  }

  /** Exchanges day and month of the dates that a spreadsheet counted. */
  exchangeCountedDays(): void {
    this.changeTimes((storedMs, row) =>
      this.writtenDays.shiftOf(row) === countedDay ? reorderedTime(storedMs, 'mdy', 'dmy') : storedMs,
    );
  }

  /** Reads whole rows from `bytes[from, end)`, which ends in a line end; gives the position where it stopped. */
  read(bytes: Uint8Array, from: number, end: number, line: number, atEnd: boolean): number {
    let at = from;
    this.line = line;
    this.stop = 'end';
    while (at < end) {
      const next = this.reshape === null ? this.plainRow(bytes, at) : -1;
      if (next >= 0) {
        this.line++;
        at = next;
        continue;
      }
      const row = rowAt(bytes, at, end, atEnd, this.context.dialect);
      if (row === null) {
        this.stop = 'more-bytes';
        return at;
      }
      if (row.unclosed)
        this.context.issues.add('quote-unclosed', {
          line: this.line,
          example: textOf(bytes, row.from, Math.min(row.to, row.from + 120)),
        });
      const cells = rowCells(bytes, row, this.context.dialect);
      if (repeatsHeader(shownCells(cells), this.plan.header)) {
        // A units row may follow a repeated header, and may say something else than the first one did.
        if (row.next >= end && !atEnd) {
          this.stop = 'more-bytes';
          return at;
        }
        const below = row.next < end ? rowAt(bytes, row.next, end, true, this.context.dialect) : null;
        if (below !== null && isUnitsRow(shownCells(rowCells(bytes, below, this.context.dialect)))) {
          this.stop = 'header-like';
          return at;
        }
      }
      const isRead = this.reshape === null ? this.textRow(cells) : this.reshapedRow(cells, this.reshape);
      if (!isRead) {
        this.stop = 'header-like';
        return at;
      }
      this.line += row.lines;
      at = row.next;
    }
    return at;
  }

  /** Reads the rows that a written one stands for; false as `textRow`. */
  private reshapedRow(cells: readonly string[], reshape: Reshape): boolean {
    if (cells.every((cell) => visibleText(cell) === '')) return true;
    return reshape(cells).every((row) => this.textRow(row));
  }

  /** False where the row looks like the header of another table. */
  private textRow(cells: readonly string[]): boolean {
    const { plan, context } = this;
    const { counts, issues } = context;
    if (cells.every((cell) => visibleText(cell) === '')) return true;
    const wallMs = this.timeOfCells(cells);
    if (!Number.isNaN(wallMs)) this.titleAbove = '';
    if (Number.isNaN(wallMs)) return this.strayRow(cells);
    const problem =
      cells.length < plan.width && !plan.trimmedRows
        ? 'row-too-short'
        : this.isTooLong(cells)
          ? 'row-too-long'
          : null;
    counts.rows++;
    if (problem === null) {
      this.lines.note(this.row, this.line);
      this.offsets.note(this.row, !Number.isNaN(context.time.offsetMinutes));
      this.writtenDays.note(this.row, this.dayShiftMs);
      this.takeCells(cells, wallMs);
      this.row++;
      return true;
    }
    this.leaveOut(cells);
    issues.add(problem, {
      line: this.line,
      example: cells.join(String.fromCharCode(context.dialect.delimiter)),
    });
    return true;
  }

  private isTooLong(cells: readonly string[]): boolean {
    for (let at = this.plan.width; at < cells.length; at++) if (visibleText(cells[at]!) !== '') return true;
    return false;
  }

  private leaveOut(cells: readonly string[]): void {
    const values = this.countValues(cells);
    this.context.counts.rowsRejected++;
    this.context.counts.values += values;
    this.context.counts.valuesRejected += values;
  }

  private strayRow(cells: readonly string[]): boolean {
    const { plan, context } = this;
    const { issues, counts } = context;
    const example = cells.join(String.fromCharCode(context.dialect.delimiter));
    const shown = shownCells(cells);
    if (repeatsHeader(shown, plan.header) || repeatsHeader(shown, plan.namesLeftOut?.cells ?? null)) {
      issues.add('header-repeated', { line: this.line });
      return true;
    }
    if (looksLikeHeader(shown)) return false;
    const time = shown[plan.time.at] ?? '';
    const values = this.countValues(cells);
    const isTitle = shown.filter((cell) => cell !== '').length === 1 && /^\p{L}/u.test(shown.join(''));
    this.titleAbove = isTitle ? shown.join('') : '';
    const code =
      time === '' ? 'time-missing' : /\d/u.test(time) && !isTitle ? 'time-unreadable' : 'row-not-data';
    counts.rows++;
    counts.rowsRejected++;
    counts.values += values;
    counts.valuesRejected += values;
    issues.add(time === '' && values === 0 ? 'row-not-data' : code, { line: this.line, example });
    return true;
  }

  /** A row that the file reader found to be no header after all. */
  passStrayRow(cells: readonly string[], line: number): void {
    const values = this.countValues(cells);
    const { counts, issues } = this.context;
    counts.rows++;
    counts.rowsRejected++;
    counts.values += values;
    counts.valuesRejected += values;
    issues.add('row-not-data', {
      line,
      example: cells.join(String.fromCharCode(this.context.dialect.delimiter)),
    });
  }

  private timeOfCells(cells: readonly string[]): number {
    const { at, clockAt } = this.plan.time;
    return this.timeOfText(cells[at] ?? '', clockAt === null ? null : (cells[clockAt] ?? ''));
  }

  /** Wall-clock ms (or UTC where the stamp has an offset) of a time given as text; NaN where it is none. */
  protected timeOfText(stamp: string, clock: string | null): number {
    const { time } = this.context;
    const { kind } = this.plan.time;
    time.offsetMinutes = Number.NaN;
    if (kind !== 'calendar') {
      const counted = this.countedTime(kind, stamp, clock);
      if (!Number.isNaN(counted) || kind !== 'serial' || clock !== null) return counted;
    }
    const day = readTimeText(time, this.dateOf(stamp, clock));
    if (Number.isNaN(day) && kind === 'calendar' && clock === null)
      return this.countedTime('serial', stamp, clock);
    if (Number.isNaN(day) || time.kind === 'time') return Number.NaN;
    return this.atOffset(clock === null ? day : day + this.clockMs(clock));
  }

  /** A time that is written as a number: since 1970, or a spreadsheet's days. */
  private countedTime(kind: TimeColumnKind, stamp: string, clock: string | null): number {
    const { time, cells, counted } = this.context;
    this.dayShiftMs = kind === 'serial' ? countedDay : Number.NaN;
    const shown = unwrapped(visibleText(stamp));
    const { kind: cellKind, value } = readCell(shown, cells.decimalMark);
    if (cellKind !== 'number') return Number.NaN;
    const decimals = /[.,](\d*)$/u.exec(shown)?.[1]?.length ?? 0;
    time.offsetMinutes = kind === 'serial' ? Number.NaN : 0;
    const ms = numericTimeMs(kind, value, decimals);
    if (kind === 'serial' && !Number.isNaN(ms)) counted.note(ms, this.line);
    return clock === null ? ms : ms + this.clockMs(clock);
  }

  /** The date as written, or that of the row above where the table writes it once a day. */
  private dateOf(stamp: string, clock: string | null): string {
    if (this.plan.time.dateOnceADay === null || clock === null) return stamp;
    const clockMs = this.clockMs(clock);
    return Number.isNaN(clockMs) ? stamp : this.carriedDate.of(visibleText(stamp), clockMs);
  }

  /** Milliseconds of the day in a cell of their own; NaN where it holds no time of day. */
  private clockMs(clock: string): number {
    const { time } = this.context;
    const ofDay = readTimeText(time, clock);
    return (time.kind as TimeKind) === 'time' ? ofDay : Number.NaN;
  }

  /** Brings a time just read to UTC where its stamp has an offset. */
  private atOffset(wallMs: number): number {
    const { offsetMinutes, dateIsOpen, endsDay } = this.context.time;
    const offsetMs = Number.isNaN(offsetMinutes) ? 0 : offsetMinutes * 60_000;
    this.dayShiftMs = dateIsOpen ? (endsDay ? dayMs : 0) - offsetMs : Number.NaN;
    return wallMs - offsetMs;
  }

  /** The same from bytes, for plain rows. */
  protected timeOfBytes(
    bytes: Uint8Array,
    from: number,
    to: number,
    clockFrom: number,
    clockTo: number,
  ): number {
    const { time } = this.context;
    if (this.plan.time.kind === 'calendar' && this.plan.time.clockAt === null && from >= 0) {
      const wall = time.read(bytes, from, to);
      if (!Number.isNaN(wall) && time.kind !== 'time') {
        return this.atOffset(wall);
      }
    }
    if (from < 0 && this.plan.time.dateOnceADay === null) return Number.NaN;
    return this.timeOfText(
      from < 0 ? '' : textOf(bytes, from, to),
      clockFrom < 0 ? (this.plan.time.clockAt === null ? null : '') : textOf(bytes, clockFrom, clockTo),
    );
  }
}

/** Position after the line end at `at`. */
export function nextLine(bytes: Uint8Array, at: number): number {
  return afterLineEnd(bytes, at, bytes.length);
}

function shownCells(cells: readonly string[]): string[] {
  return cells.map((cell) => unwrapped(visibleText(cell)));
}

/** The names of the header, or the lower part of them, in whatever case; some may be missing or cut, but none is another. */
function repeatsHeader(shown: readonly string[], header: readonly string[] | null): boolean {
  if (header === null) return false;
  let same = 0;
  let filled = 0;
  for (let at = 0; at < Math.max(shown.length, header.length); at++) {
    const cell = (shown[at] ?? '').toLowerCase();
    const name = (header[at] ?? '').toLowerCase();
    if (cell === '' && name === '') continue;
    filled++;
    if (cell === name || (cell !== '' && name.endsWith(` ${cell}`))) same++;
    else if (!name.startsWith(cell)) return false;
  }
  return filled > 0 && same >= 0.8 * filled;
}

export function spanOf(times: Float64Array): { from: number; to: number } {
  let from = Number.POSITIVE_INFINITY;
  let to = Number.NEGATIVE_INFINITY;
  for (let at = 0; at < times.length; at++) {
    const time = times[at]!;
    if (time < from) from = time;
    if (time > to) to = time;
  }
  return from <= to ? { from, to } : { from: 0, to: 0 };
}
