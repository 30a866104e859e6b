import { textOf } from '../encoding/transcode.ts';
import { unitInHeader, unitNamed } from '../header/unit-words.ts';
import type { FileContext } from '../reading/file-context.ts';
import { ImportRefusal } from '../readings.ts';
import { growingCounts, growingFloats } from '../scan/growing-numbers.ts';
import { unwrapped, visibleText } from '../values/clean-text.ts';
import { ValueTally } from '../values/value-tally.ts';
import { qualitySaysGood } from '../values/words.ts';
import { RepeatedStamp } from './repeated-stamp.ts';
import type { LongColumns, TablePlan } from './table-plan.ts';
import { nextLine, TableReader } from './table-reader.ts';

const newline = 10;
const carriageReturn = 13;
const blank = 32;
const mostPoints = 100_000;

/** The readings of one point of a long table, in the order of the file. */
export class LongPoint {
  readonly times = growingFloats();
  readonly values = growingFloats();
  /** Row of the table that each reading stood in. */
  readonly rows = growingCounts();
  readonly tally: ValueTally;
  /** Name and unit as bytes, to know them again without making text. */
  readonly nameBytes: Uint8Array;
  unitBytes: Uint8Array | null = null;
  /** Whether the name stands in a cell as it is, without quotes or blanks around it. */
  readonly isBare: boolean;
  /** The point that followed this one last time. */
  next: LongPoint | null = null;

  constructor(tally: ValueTally, nameBytes: Uint8Array, isBare: boolean) {
    this.tally = tally;
    this.nameBytes = nameBytes;
    this.isBare = isBare;
  }
}

/** A table with one reading a row: time, point, value, perhaps unit and quality. */
export class LongTable extends TableReader {
  readonly points: LongPoint[] = [];
  private readonly byName = new Map<string, LongPoint>();
  private readonly firstOrder: number;
  private readonly long: LongColumns;
  private readonly starts: Int32Array;
  private readonly ends: Int32Array;
  private readonly filled: Uint8Array;
  private last: LongPoint | null = null;
  private earliest = Number.POSITIVE_INFINITY;
  private latest = Number.NEGATIVE_INFINITY;
  private readonly goodBytes: Uint8Array[] = [];
  private readonly hasThreeCells: boolean;
  private readonly stamp = new RepeatedStamp();

  constructor(plan: TablePlan, long: LongColumns, context: FileContext, firstOrder: number) {
    super(plan, context);
    this.long = long;
    this.firstOrder = firstOrder;
    this.starts = new Int32Array(plan.width);
    this.ends = new Int32Array(plan.width);
    this.filled = new Uint8Array(plan.width);
    this.hasThreeCells =
      plan.width === 3 &&
      plan.time.at === 0 &&
      long.point.length === 1 &&
      long.point[0] === 1 &&
      long.value === 2;
  }

  protected plainRow(bytes: Uint8Array, start: number): number {
    const next = this.hasThreeCells ? this.rowLikeBefore(bytes, start) : -1;
    return next >= 0 ? next : this.anyPlainRow(bytes, start);
  }

  /** A row with the stamp of the row above, of the point that was looked for next, and with a plain number; else -1. */
  private rowLikeBefore(bytes: Uint8Array, start: number): number {
    const { stamp, numbers } = this;
    const point = this.last === null ? null : this.last.next;
    if (point === null || !point.isBare || !stamp.isAt(bytes, start)) return -1;
    const { delimiter } = this.context.dialect;
    const nameFrom = start + stamp.length + 1;
    const valueFrom = nameFrom + point.nameBytes.length + 1;
    if (bytes[nameFrom - 1] !== delimiter || bytes[valueFrom - 1] !== delimiter) return -1;
    if (!sameBytes(bytes, nameFrom, valueFrom - 1, point.nameBytes)) return -1;
    const reading = numbers.read(bytes, valueFrom, this.plainMark);
    const lineEnd = numbers.next;
    if (Number.isNaN(reading) || (bytes[lineEnd] !== newline && bytes[lineEnd] !== carriageReturn)) return -1;
    this.last = point;
    this.push(point, stamp.wallMs, reading);
    this.lines.note(this.row, this.line);
    this.offsets.note(this.row, stamp.hasOffset);
    this.writtenDays.note(this.row, stamp.dayShiftMs);
    this.context.counts.rows++;
    this.row++;
    return nextLine(bytes, lineEnd);
  }

  private anyPlainRow(bytes: Uint8Array, start: number): number {
    const { starts, ends, long, numbers } = this;
    const { time, width } = this.plan;
    const lineEnd = this.spans(bytes, start);
    if (lineEnd < 0) return -1;
    if (lineEnd === start) return nextLine(bytes, lineEnd);
    const timeFrom = this.filled[time.at] === 1 ? starts[time.at]! : -1;
    const clockAt = time.clockAt;
    const clocked = clockAt !== null && this.filled[clockAt] === 1;
    const wall = this.timeOfBytes(
      bytes,
      timeFrom,
      ends[time.at]!,
      clocked ? starts[clockAt]! : -1,
      clocked ? ends[clockAt]! : -1,
    );
    if (Number.isNaN(wall) || width < 2) return -1;
    const point = this.pointOf(bytes);
    if (point === null) return -1;
    const { value, unit, quality } = long;
    if (
      quality !== null &&
      this.filled[quality] === 1 &&
      !this.isGood(bytes, starts[quality]!, ends[quality]!)
    )
      return -1;
    if (unit !== null && this.filled[unit] === 1) this.noteUnit(point, bytes, starts[unit]!, ends[unit]!);
    if (this.filled[value] === 1) {
      const from = starts[value]!;
      const reading = numbers.read(bytes, from, this.quotedMark);
      if (Number.isNaN(reading) || numbers.next !== ends[value]!) {
        this.pushText(point, textOf(bytes, from, ends[value]!), wall);
      } else this.push(point, wall, reading);
    }
    this.finishRow();
    this.context.counts.rows++;
    this.row++;
    const hasOffset = !Number.isNaN(this.context.time.offsetMinutes);
    if (timeFrom === start) this.stamp.keep(bytes, start, ends[time.at]!, wall, this.dayShiftMs, hasOffset);
    return nextLine(bytes, lineEnd);
  }

  /** Finds the cells of a plain row; position of its line end, or -1 where it is not plain. */
  private spans(bytes: Uint8Array, start: number): number {
    const { delimiter, quote } = this.context.dialect;
    const { starts, ends, filled } = this;
    const { width, trimmedRows } = this.plan;
    let column = 0;
    let at = start;
    for (;;) {
      let byte = bytes[at]!;
      while (byte === blank) byte = bytes[++at]!;
      const from = at;
      let to = at;
      if (byte === quote) {
        byte = bytes[++at]!;
        while (byte !== quote) {
          if (byte === newline || byte === carriageReturn) return -1;
          byte = bytes[++at]!;
        }
        to = at;
        byte = bytes[++at]!;
        while (byte === blank) byte = bytes[++at]!;
        if (byte !== delimiter && byte !== newline && byte !== carriageReturn) return -1;
        if (column >= width) return -1;
        starts[column] = from + 1;
        ends[column] = to;
        filled[column] = to > from + 1 ? 1 : 0;
      } else {
        while (byte !== delimiter && byte !== newline && byte !== carriageReturn) byte = bytes[++at]!;
        to = at;
        while (to > from && bytes[to - 1] === blank) to--;
        if (column < width) {
          starts[column] = from;
          ends[column] = to;
          filled[column] = to > from ? 1 : 0;
        } else if (to > from) return -1;
      }
      if (byte !== delimiter) break;
      at++;
      column++;
    }
    if (column === 0 && filled[0] === 0) return at === start ? at : -1;
    if (column < width - 1) {
      if (!trimmedRows) return -1;
      for (let missing = column + 1; missing < width; missing++) filled[missing] = 0;
    }
    return at;
  }

  /** The point that a plain row names, or null where it has to be worked out from text. */
  private pointOf(bytes: Uint8Array): LongPoint | null {
    const { long, starts, ends } = this;
    if (long.point.length > 1)
      return this.pointNamed(long.point.map((at) => this.spanText(bytes, at)).join(' '));
    const at = long.point[0]!;
    if (this.filled[at] === 0) return null;
    const [from, to] = [starts[at]!, ends[at]!];
    const last = this.last;
    const guess = last === null ? null : last.next;
    if (guess !== null && sameBytes(bytes, from, to, guess.nameBytes)) {
      this.last = guess;
      return guess;
    }
    if (last !== null && sameBytes(bytes, from, to, last.nameBytes)) {
      last.next = last;
      return last;
    }
    const point = this.pointNamed(textOf(bytes, from, to));
    if (point === null || !sameBytes(bytes, from, to, point.nameBytes)) return point;
    if (last !== null) last.next = point;
    this.last = point;
    return point;
  }

  private spanText(bytes: Uint8Array, at: number): string {
    return this.filled[at] === 1 ? textOf(bytes, this.starts[at]!, this.ends[at]!) : '';
  }

  private pointNamed(text: string): LongPoint | null {
    const name = unwrapped(visibleText(text));
    if (name === '') return null;
    let point = this.byName.get(name);
    if (point === undefined) {
      if (this.points.length >= mostPoints) {
        throw new ImportRefusal(
          'too-many-points',
          `${this.context.name} line ${this.line}: more than ${mostPoints} different point names were met; the column taken for the points seems to hold something else.`,
        );
      }
      const unit = unitInHeader(name);
      const tally = new ValueTally(
        name,
        this.firstOrder + this.points.length,
        unit,
        unit === null ? null : 'header',
      );
      const nameBytes = new TextEncoder().encode(name);
      point = new LongPoint(tally, nameBytes, this.isBare(nameBytes));
      this.byName.set(name, point);
      this.points.push(point);
    }
    return point;
  }

  private isBare(name: Uint8Array): boolean {
    const { delimiter, quote } = this.context.dialect;
    return ![delimiter, quote, blank, newline, carriageReturn].some(
      (byte) =>
        name[0] === byte || name.at(-1) === byte || (byte !== blank && byte !== quote && name.includes(byte)),
    );
  }

  private isGood(bytes: Uint8Array, from: number, to: number): boolean {
    for (const known of this.goodBytes) if (sameBytes(bytes, from, to, known)) return true;
    if (qualitySaysGood(visibleText(textOf(bytes, from, to)), this.long.qualityCounted) === false)
      return false;
    if (this.goodBytes.length < 8) this.goodBytes.push(bytes.slice(from, to));
    return true;
  }

  private noteUnit(point: LongPoint, bytes: Uint8Array, from: number, to: number): void {
    if (point.unitBytes !== null && sameBytes(bytes, from, to, point.unitBytes)) return;
    point.unitBytes = bytes.slice(from, to);
    this.takeUnitText(point, textOf(bytes, from, to));
  }

  private takeUnitText(point: LongPoint, text: string): void {
    const unit = unitNamed(unwrapped(visibleText(text)));
    if (unit === null) return;
    const { name, unit: before, unitSource } = point.tally;
    if (unitSource !== 'cell' && point.values.length === 0) {
      if (before !== null && before !== unit) {
        const because = `the unit beside its values says so, though its name says ${before}`;
        this.context.issues.choose(`unit of “${name}”`, unit, because, null);
      }
      point.tally.unit = unit;
      point.tally.unitSource = 'cell';
    } else point.tally.takeUnit(unit, point.values.length, this.line);
  }

  private takeText(point: LongPoint, text: string): number {
    const { cells, issues } = this.context;
    const { tally } = point;
    const before = tally.unitSegments.length;
    const value = tally.take(text, cells, point.values.length, this.line, issues);
    // A unit behind one number is not that of the next, which its own unit cell names again.
    if (tally.unitSegments.length > before) point.unitBytes = null;
    return value;
  }

  /** A cell of nothing but blanks, of whatever kind, says nothing: no reading, not even a missing one. */
  private pushText(point: LongPoint, text: string, wallMs: number): void {
    if (visibleText(text) !== '') this.push(point, wallMs, this.takeText(point, text));
  }

  /** NaN where the cell holds no value, which in a log of changes ends the one before. */
  private push(point: LongPoint, wallMs: number, value: number): void {
    if (wallMs < this.earliest) this.earliest = wallMs;
    if (wallMs > this.latest) this.latest = wallMs;
    point.times.push(wallMs);
    point.values.push(value);
    point.rows.push(this.row);
  }

  private finishRow(): void {
    this.lines.note(this.row, this.line);
    this.offsets.note(this.row, !Number.isNaN(this.context.time.offsetMinutes));
    this.writtenDays.note(this.row, this.dayShiftMs);
  }

  protected takeCells(cells: readonly string[], wallMs: number): void {
    const { long, context } = this;
    const hasOffset = !Number.isNaN(context.time.offsetMinutes);
    const point = this.pointNamed(long.point.map((at) => visibleText(cells[at] ?? '')).join(' '));
    const value = cells[long.value] ?? '';
    const isEmpty = visibleText(value) === '';
    if (point === null) {
      if (!isEmpty) this.rejectValue('value-unreadable', null, cells);
      return;
    }
    if (long.unit !== null) this.takeUnitText(point, cells[long.unit] ?? '');
    if (isEmpty) return;
    if (
      long.quality !== null &&
      qualitySaysGood(visibleText(cells[long.quality] ?? ''), long.qualityCounted) === false
    ) {
      this.rejectValue('quality-bad', point, cells);
      return;
    }
    const reading = this.takeText(point, value);
    context.time.offsetMinutes = hasOffset ? 0 : Number.NaN;
    this.push(point, wallMs, reading);
  }

  private rejectValue(
    code: 'quality-bad' | 'value-unreadable',
    point: LongPoint | null,
    cells: readonly string[],
  ): void {
    const { counts, issues, dialect } = this.context;
    if (point === null) {
      counts.values++;
      counts.valuesRejected++;
    } else point.tally.rejected++;
    issues.add(code, {
      line: this.line,
      column: point?.tally.name ?? null,
      example: cells.join(String.fromCharCode(dialect.delimiter)),
    });
  }

  protected countValues(cells: readonly string[]): number {
    return visibleText(cells[this.long.value] ?? '') === '' ? 0 : 1;
  }

  timeSpan(): { from: number; to: number } {
    return {
      from: this.earliest <= this.latest ? this.earliest : 0,
      to: this.earliest <= this.latest ? this.latest : 0,
    };
  }

  protected changeTimes(change: (storedMs: number, row: number) => number): void {
    this.earliest = Number.POSITIVE_INFINITY;
    this.latest = Number.NEGATIVE_INFINITY;
    this.stamp.forget();
    for (const point of this.points) {
      const rows = point.rows.copy();
      point.times.map((storedMs, index) => {
        const again = change(storedMs, rows[index]!);
        if (again < this.earliest) this.earliest = again;
        if (again > this.latest) this.latest = again;
        return again;
      });
    }
  }
}

function sameBytes(bytes: Uint8Array, from: number, to: number, known: Uint8Array): boolean {
  const { length } = known;
  if (to - from !== length) return false;
  for (let at = 0; at < length; at++) if (bytes[from + at] !== known[at]) return false;
  return true;
}
