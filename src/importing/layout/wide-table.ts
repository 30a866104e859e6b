import { textOf } from '../encoding/transcode.ts';
import type { FileContext } from '../reading/file-context.ts';
import { PlainRun } from '../scan/plain-run.ts';
import { visibleText } from '../values/clean-text.ts';
import { type ColumnProfile, ColumnProfiler } from '../values/column-profile.ts';
import { ValueTally } from '../values/value-tally.ts';
import type { TablePlan } from './table-plan.ts';
import { nextLine, spanOf, TableReader } from './table-reader.ts';

const newline = 10;
const carriageReturn = 13;
const blank = 32;
const mostGuessedRows = 4_000_000;

/** A table with one column a point: one array of times, one array of values a column. */
export class WideTable extends TableReader {
  times: Float64Array;
  readonly tallies: readonly ValueTally[];
  /** By cell position: the values of the column, or null for a cell that is no value. */
  private readonly targets: (Float64Array | null)[];
  private readonly tallyAt: (ValueTally | null)[];
  private readonly profilers: readonly ColumnProfiler[];
  private profiledRows = 0;
  private readonly run = new PlainRun();
  private capacity: number;
  private readonly pendingColumn: Int32Array;
  private readonly pendingFrom: Int32Array;
  private readonly pendingTo: Int32Array;

  constructor(
    plan: TablePlan,
    context: FileContext,
    names: readonly string[],
    firstOrder: number,
    guessedRows: number,
  ) {
    super(plan, context);
    const { width } = plan;
    const affordable = Math.floor((mostGuessedRows * 8) / Math.max(8, plan.columns.length));
    this.capacity = Math.max(256, Math.min(guessedRows, affordable));
    this.times = new Float64Array(this.capacity);
    this.targets = new Array<Float64Array | null>(width).fill(null);
    this.tallyAt = new Array<ValueTally | null>(width).fill(null);
    // One block for all columns is cheaper to get than one each.
    const room = new ArrayBuffer(this.capacity * 8 * plan.columns.length);
    this.tallies = plan.columns.map((column, index) => {
      const tally = new ValueTally(names[column.at]!, firstOrder + index, column.unit, column.unitSource);
      this.tallyAt[column.at] = tally;
      this.targets[column.at] = new Float64Array(room, index * this.capacity * 8, this.capacity);
      return tally;
    });
    this.profilers = plan.columns.map(() => new ColumnProfiler());
    this.pendingColumn = new Int32Array(width);
    this.pendingFrom = new Int32Array(width);
    this.pendingTo = new Int32Array(width);
  }

  override read(bytes: Uint8Array, from: number, end: number, line: number, atEnd: boolean): number {
    const stopped = super.read(bytes, from, end, line, atEnd);
    for (const [index, { at }] of this.plan.columns.entries()) {
      this.profilers[index]!.take(this.targets[at]!, this.profiledRows, this.row);
    }
    this.profiledRows = this.row;
    return stopped;
  }

  /** What the values of the column at position `index` of the plan show. */
  profileOf(index: number): ColumnProfile {
    return this.profilers[index]!;
  }

  protected plainRow(bytes: Uint8Array, start: number): number {
    const { dialect } = this.context;
    const { delimiter, quote } = dialect;
    const { numbers, targets, plainMark, row } = this;
    const { width, time } = this.plan;
    if (row === this.capacity) this.grow();
    let pending = 0;
    let timeFrom = -1;
    let timeTo = -1;
    let clockFrom = -1;
    let clockTo = -1;
    let column = 0;
    let at = start;
    for (;;) {
      at = this.run.read(bytes, at, column, targets, row, delimiter, plainMark);
      column = this.run.column;
      let byte = bytes[at]!;
      while (byte === blank && delimiter !== blank) byte = bytes[++at]!;
      const target = column < width ? targets[column]! : null;
      if (byte === delimiter || byte === newline || byte === carriageReturn) {
        if (target !== null) target[row] = Number.NaN;
      } else {
        let plain = false;
        if (target !== null) {
          const value = numbers.read(bytes, at, plainMark);
          if (!Number.isNaN(value)) {
            let end = numbers.next;
            byte = bytes[end]!;
            while (byte === blank && delimiter !== blank) byte = bytes[++end]!;
            if (byte === delimiter || byte === newline || byte === carriageReturn) {
              target[row] = value;
              at = end;
              plain = true;
            }
          }
        }
        if (!plain) {
          byte = bytes[at]!;
          let from = at;
          let to: number;
          if (byte === quote) {
            from++;
            at++;
            byte = bytes[at]!;
            while (byte !== quote) {
              if (byte === newline || byte === carriageReturn) return -1;
              byte = bytes[++at]!;
            }
            to = at;
            byte = bytes[++at]!;
            while (byte === blank && delimiter !== blank) byte = bytes[++at]!;
            if (byte !== delimiter && byte !== newline && byte !== carriageReturn) return -1;
          } else {
            while (byte !== delimiter && byte !== newline && byte !== carriageReturn) byte = bytes[++at]!;
            to = at;
          }
          if (target !== null) {
            const value = from < to ? numbers.read(bytes, from, this.quotedMark) : Number.NaN;
            if (!Number.isNaN(value) && numbers.next === to) {
              target[row] = value;
            } else {
              target[row] = Number.NaN;
              this.pendingColumn[pending] = column;
              this.pendingFrom[pending] = from;
              this.pendingTo[pending++] = to;
            }
          } else if (column === time.at) {
            timeFrom = from;
            timeTo = to;
          } else if (column === time.clockAt) {
            clockFrom = from;
            clockTo = to;
          } else if (column >= width) return -1;
        }
      }
      if (byte !== delimiter) break;
      at++;
      column++;
    }
    if (column === 0 && timeFrom < 0 && pending === 0 && at - start === 0) return nextLine(bytes, at);
    if (column < width - 1) {
      if (!this.plan.trimmedRows) return -1;
      for (let missing = column + 1; missing < width; missing++) {
        const target = targets[missing]!;
        if (target !== null) target[row] = Number.NaN;
      }
    }
    const wall = this.timeOfBytes(bytes, timeFrom, timeTo, clockFrom, clockTo);
    if (Number.isNaN(wall)) return -1;
    for (let each = 0; each < pending; each++) {
      const where = this.pendingColumn[each]!;
      const text = textOf(bytes, this.pendingFrom[each]!, this.pendingTo[each]!);
      this.takeText(where, text);
    }
    this.commit(wall);
    this.context.counts.rows++;
    this.row++;
    return nextLine(bytes, at);
  }

  private takeText(column: number, text: string): void {
    const { cells, issues } = this.context;
    this.targets[column]![this.row] = this.tallyAt[column]!.take(text, cells, this.row, this.line, issues);
  }

  private commit(wallMs: number): void {
    this.times[this.row] = wallMs;
    this.lines.note(this.row, this.line);
    this.offsets.note(this.row, !Number.isNaN(this.context.time.offsetMinutes));
    this.writtenDays.note(this.row, this.dayShiftMs);
  }

  protected takeCells(cells: readonly string[], wallMs: number): void {
    if (this.row === this.capacity) this.grow();
    for (let column = 0; column < this.plan.width; column++) {
      const target = this.targets[column]!;
      if (target === null) continue;
      const cell = cells[column] ?? '';
      if (cell === '') target[this.row] = Number.NaN;
      else this.takeText(column, cell);
    }
    this.commit(wallMs);
  }

  protected countValues(cells: readonly string[]): number {
    let count = 0;
    for (const { at } of this.plan.columns) if (visibleText(cells[at] ?? '') !== '') count++;
    return count;
  }

  protected changeTimes(change: (storedMs: number, row: number) => number): void {
    for (let row = 0; row < this.row; row++) this.times[row] = change(this.times[row]!, row);
  }

  timeSpan(): { from: number; to: number } {
    return spanOf(this.times.subarray(0, this.row));
  }

  private grow(): void {
    this.capacity *= 2;
    const larger = (old: Float64Array): Float64Array => {
      const copy = new Float64Array(this.capacity);
      copy.set(old);
      return copy;
    };
    this.times = larger(this.times);
    for (let at = 0; at < this.targets.length; at++) {
      const target = this.targets[at]!;
      if (target !== null) this.targets[at] = larger(target);
    }
  }

  /** The values of the column at cell position `at`, one a row; the table gives them up. */
  takeValues(at: number): Float64Array {
    const values = this.targets[at]!;
    this.targets[at] = null;
    return exact(values, this.row);
  }

  takeTimes(): Float64Array {
    return exact(this.times, this.row);
  }
}

/** The first `count` values; copied only where much of the array would be wasted. */
function exact(values: Float64Array, count: number): Float64Array {
  if (values.length === count) return values;
  return count > 0.9 * values.length ? values.subarray(0, count) : values.slice(0, count);
}
