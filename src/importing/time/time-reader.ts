import { dayMs, dayNumber } from './civil.ts';
import { DateEvidence, type DateOrder, dayInOrder } from './date-order.ts';
import { TimeFields } from './time-fields.ts';
import { TimeTokens } from './time-tokens.ts';

export type TimeKind = 'date-time' | 'date' | 'time';

/**
 * Reads the time stamps of one file, cell by cell, as wall-clock milliseconds (the local clock's reading as
 * if it were UTC) and the offset where the stamp carries one. Learns the order of day and month on the way:
 * `order` is the present guess, `evidence` what all dates said; `onReorder` is called when a date shows that
 * the guess was wrong, so that times already stored can be read again.
 */
export class TimeReader {
  order: DateOrder;
  readonly evidence = new DateEvidence();
  onReorder: ((from: DateOrder, to: DateOrder) => void) | null = null;
  offsetMinutes = Number.NaN;
  kind: TimeKind = 'date-time';
  /** True where the order of day and month decides the date just read. */
  dateIsOpen = false;
  /** True where the time just read was written 24:00 of the day before. */
  endsDay = false;
  sawDots = false;
  sawTwelveHourClock = false;
  sawT = false;
  /** A cell named two times, of which the first was taken. */
  sawInterval = false;
  /** A hint from outside the file. */
  zoneIsAmerican = false;
  /** Stamps whose order is fixed by their writing. */
  fixedCount = 0;

  private readonly tokens = new TimeTokens();
  private readonly fields = new TimeFields();
  private readonly orderIsGiven: boolean;
  private lastFirst = -1;
  private lastSecond = -1;
  private lastThird = -1;
  private lastFixed = false;
  private lastDay = Number.NaN;
  private readonly previous = new Uint8Array(40);
  /** Length of the stamp just read; -1 where the next cannot be told by its likeness to it. */
  private previousLength = -1;
  private previousDayMs = Number.NaN;
  private clockFrom = 0;

  constructor(order: DateOrder | null) {
    this.order = order ?? 'mdy';
    this.orderIsGiven = order !== null;
  }

  /** Wall-clock ms of the cell `bytes[from, to)`; ms of the day for a cell with only a time; NaN for neither. */
  read(bytes: Uint8Array, from: number, to: number): number {
    this.endsDay = false;
    const quick = this.readLikePrevious(bytes, from, to);
    if (!Number.isNaN(quick)) return quick;
    this.previousLength = -1;
    if (to - from > 64 || !this.tokens.read(bytes, from, to)) return Number.NaN;
    const fields = this.fields;
    if (!fields.interpret(this.tokens)) return Number.NaN;
    this.offsetMinutes = fields.offsetMinutes;
    if (fields.twelveHourClock) this.sawTwelveHourClock = true;
    this.endsDay = fields.msOfDay >= dayMs;
    if (!fields.hasDate) {
      this.kind = 'time';
      return fields.msOfDay;
    }
    this.kind = fields.hasTime ? 'date-time' : 'date';
    this.dateIsOpen = !fields.fixed;
    const day = this.day(fields);
    if (Number.isNaN(day)) return Number.NaN;
    if (this.tokens.leadingT) this.sawT = true;
    this.remember(bytes, from, to, day * dayMs);
    return day * dayMs + fields.msOfDay;
  }

  private day(fields: TimeFields): number {
    const { first, second, third, fixed } = fields;
    if (
      first === this.lastFirst &&
      second === this.lastSecond &&
      third === this.lastThird &&
      fixed === this.lastFixed
    ) {
      return this.lastDay;
    }
    const day = fixed
      ? dayNumber(first, second, third)
      : this.openDay(first, second, third, fields.separator);
    if (fixed) this.fixedCount++;
    this.lastFirst = first;
    this.lastSecond = second;
    this.lastThird = third;
    this.lastFixed = fixed;
    this.lastDay = day;
    return day;
  }

  private openDay(first: number, second: number, third: number, separator: number): number {
    if (separator === 46) this.sawDots = true;
    const possibleBefore = this.evidence.possible();
    this.evidence.note(first, second, third);
    const day = dayInOrder(this.order, first, second, third);
    if (!Number.isNaN(day) || this.orderIsGiven) return day;
    const possible = this.evidence.possible();
    const better = possible[0];
    if (better === undefined || !possibleBefore.includes(better)) return day;
    this.onReorder?.(this.order, better);
    this.order = better;
    return dayInOrder(better, first, second, third);
  }

  /** Takes another order after the fact; stored times are the caller's to read again. */
  settleOn(order: DateOrder): void {
    this.order = order;
    this.lastFirst = -1;
    this.previousLength = -1;
  }

  /** Stamps that end in HH:MM or HH:MM:SS and share everything before it with the stamp just read. */
  private readLikePrevious(bytes: Uint8Array, from: number, to: number): number {
    const length = to - from;
    if (length !== this.previousLength) return Number.NaN;
    const { previous, clockFrom } = this;
    for (let at = 0; at < clockFrom; at++) if (bytes[from + at] !== previous[at]) return Number.NaN;
    const clock = from + clockFrom;
    const hour = twoDigits(bytes, clock);
    const minute = twoDigits(bytes, clock + 3);
    if (bytes[clock + 2] !== 58 || !(hour < 24) || !(minute < 60)) return Number.NaN;
    if (length - clockFrom === 5) return this.previousDayMs + hour * 3_600_000 + minute * 60_000;
    const second = twoDigits(bytes, clock + 6);
    if (bytes[clock + 5] !== 58 || !(second < 60)) return Number.NaN;
    return this.previousDayMs + hour * 3_600_000 + minute * 60_000 + second * 1000;
  }

  private remember(bytes: Uint8Array, from: number, to: number, ofDay: number): void {
    const length = to - from;
    if (length > 40 || this.tokens.meridiem >= 0 || !Number.isNaN(this.offsetMinutes)) return;
    const clockLength = bytes[to - 6] === 58 && bytes[to - 3] === 58 ? 8 : 5;
    if (length < clockLength + 6 || this.kind !== 'date-time') return;
    const clock = to - clockLength;
    if (
      Number.isNaN(twoDigits(bytes, clock)) ||
      Number.isNaN(twoDigits(bytes, to - 2)) ||
      bytes[clock + 2] !== 58
    )
      return;
    const edge = bytes[clock - 1]!;
    if (edge !== 32 && edge !== 84) return;
    for (let at = 0; at < length; at++) this.previous[at] = bytes[from + at]!;
    this.previousLength = length;
    this.clockFrom = length - clockLength;
    this.previousDayMs = ofDay;
  }
}

/** Value of two digits, NaN where one is none. */
function twoDigits(bytes: Uint8Array, at: number): number {
  const tens = bytes[at]! - 48;
  const ones = bytes[at + 1]! - 48;
  return tens >= 0 && tens <= 9 && ones >= 0 && ones <= 9 ? tens * 10 + ones : Number.NaN;
}
