import { civilDate, dayNumber, isLeapYear } from './civil.ts';
import { fullYear } from './date-order.ts';
import type { TimeTokens } from './time-tokens.ts';

const colon = 58;
const hourLetter = 104;
const point = 46;
const comma = 44;
const plus = 43;
const minus = 45;

/**
 * What the tokens of one time stamp mean: three numbers of a date and which orders they allow, the time of
 * day, the offset. Reused like the tokens.
 */
export class TimeFields {
  hasDate = false;
  hasTime = false;
  first = 0;
  second = 0;
  third = 0;
  /** True where the writing itself fixes year, month and day (`first`, `second`, `third` in that order). */
  fixed = false;
  separator = 0;
  msOfDay = 0;
  twelveHourClock = false;
  /** NaN where the stamp has none. */
  offsetMinutes = Number.NaN;

  /** False where the numbers are no time stamp. */
  interpret(tokens: TimeTokens): boolean {
    this.hasDate = false;
    this.hasTime = false;
    this.fixed = false;
    this.msOfDay = 0;
    this.offsetMinutes = tokens.zoneMinutes;
    this.twelveHourClock = tokens.meridiem >= 0;
    const { count, before, digits } = tokens;
    // 20260903:0005
    if (count === 2 && digits[0] === 8 && digits[1]! >= 4) return this.withoutColons(tokens);
    let clockAt = 1;
    while (clockAt < count && before[clockAt] !== colon && before[clockAt] !== hourLetter) clockAt++;
    clockAt--;
    if (clockAt === count - 1) return this.withoutColons(tokens);
    const end = this.clock(tokens, clockAt);
    if (end < 0) return false;
    const dateNumbers = clockAt + (count - end);
    if (dateNumbers === 0) return true;
    if (dateNumbers === 1 && clockAt === 1) return this.compactDate(tokens, 0);
    if (dateNumbers === 2 && clockAt === 2) return this.ordinalDate(tokens);
    if (dateNumbers !== 3) return false;
    const pick = (index: number): number => (index < clockAt ? index : end + index - clockAt);
    return this.date(tokens, pick(0), pick(1), pick(2));
  }

  /** Reads hour, minute, second, fraction and offset from `at` on; the index after them, or -1. */
  private clock(tokens: TimeTokens, at: number): number {
    const { numbers, digits, before, count } = tokens;
    const hour = numbers[at]!;
    const minute = numbers[at + 1]!;
    let next = at + 2;
    let second = 0;
    if (digits[at]! > 2 || digits[at + 1]! > 2) return -1;
    if (next < count && (before[next] === colon || before[next] === hourLetter)) {
      if (digits[next]! > 2) return -1;
      second = numbers[next++]!;
      const mark = next < count ? before[next]! : 0;
      if (mark === point || mark === comma || mark === colon) {
        second += numbers[next]! / 10 ** digits[next]!;
        next++;
      }
    }
    if (!this.timeOfDay(tokens, hour, minute, second)) return -1;
    if (at > 0 && next < count && (before[next] === plus || before[next] === minus))
      return this.offset(tokens, next);
    return next;
  }

  private offset(tokens: TimeTokens, at: number): number {
    const { numbers, digits, before, count } = tokens;
    let hours = numbers[at]!;
    let minutes = 0;
    let next = at + 1;
    if (digits[at] === 4) {
      minutes = hours % 100;
      hours = Math.floor(hours / 100);
    } else if (digits[at]! > 2) return -1;
    else if (next < count && before[next] === colon) minutes = numbers[next++]!;
    if (hours > 18 || minutes > 59) return -1;
    this.offsetMinutes = (before[at] === minus ? -1 : 1) * (hours * 60 + minutes);
    return next;
  }

  private timeOfDay(tokens: TimeTokens, hour: number, minute: number, second: number): boolean {
    if (minute > 59 || second >= 61 || hour > 24) return false;
    if (hour === 24 && (minute > 0 || second > 0)) return false;
    if (tokens.meridiem >= 0 && hour <= 12) hour = (hour % 12) + tokens.meridiem;
    else if (tokens.meridiem === 0) return false;
    this.hasTime = true;
    this.msOfDay = hour * 3_600_000 + minute * 60_000 + Math.round(second * 1000);
    return true;
  }

  private withoutColons(tokens: TimeTokens): boolean {
    const { numbers, digits, before, count } = tokens;
    if (digits[0]! === 8 || digits[0]! === 14 || digits[0]! === 12) {
      if (!this.compactDate(tokens, 0)) return false;
      if (count === 1) return true;
      return count === 2 && digits[0] === 8 && this.compactTime(tokens, 1);
    }
    if (count === 2) return this.ordinalDate(tokens);
    if (count < 3) return false;
    if (!this.date(tokens, 0, 1, 2)) return false;
    if (count === 3) return true;
    if (count === 4 && tokens.meridiem >= 0) return this.timeOfDay(tokens, numbers[3]!, 0, 0);
    if (count === 4) return this.compactTime(tokens, 3);
    if (count > 6 || before[4] === plus) return false;
    return this.timeOfDay(tokens, numbers[3]!, numbers[4]!, count === 6 ? numbers[5]! : 0);
  }

  /** 20260901, 202609010600, 20260901060000 */
  private compactDate(tokens: TimeTokens, at: number): boolean {
    const length = tokens.digits[at]!;
    let rest = tokens.numbers[at]!;
    if (length === 14 || length === 12) {
      const second = length === 14 ? rest % 100 : 0;
      if (length === 14) rest = Math.floor(rest / 100);
      const minute = rest % 100;
      const hour = Math.floor(rest / 100) % 100;
      rest = Math.floor(rest / 10_000);
      if (!this.timeOfDay(tokens, hour, minute, second)) return false;
    } else if (length !== 8) return false;
    return this.fixedDate(Math.floor(rest / 10_000), Math.floor(rest / 100) % 100, rest % 100);
  }

  /** 2026-246: the day of the year (ISO 8601). */
  private ordinalDate({ numbers, digits, before }: TimeTokens): boolean {
    const [year, dayOfYear] = [numbers[0]!, numbers[1]!];
    if (digits[0] !== 4 || digits[1] !== 3 || before[1] !== minus) return false;
    if (year < 1990 || year > 2100 || dayOfYear < 1 || dayOfYear > (isLeapYear(year) ? 366 : 365))
      return false;
    const { month, day } = civilDate(dayNumber(year, 1, 1) + dayOfYear - 1);
    return this.fixedDate(year, month, day);
  }

  private compactTime(tokens: TimeTokens, at: number): boolean {
    const length = tokens.digits[at]!;
    const value = tokens.numbers[at]!;
    if (length === 6)
      return this.timeOfDay(tokens, Math.floor(value / 10_000), Math.floor(value / 100) % 100, value % 100);
    return length === 4 && this.timeOfDay(tokens, Math.floor(value / 100), value % 100, 0);
  }

  private fixedDate(year: number, month: number, day: number): boolean {
    this.hasDate = true;
    this.fixed = true;
    this.first = year;
    this.second = month;
    this.third = day;
    return month >= 1 && month <= 12 && day >= 1 && day <= 31 && year >= 1900 && year <= 2200;
  }

  private date(tokens: TimeTokens, a: number, b: number, c: number): boolean {
    const { numbers, digits, monthAt } = tokens;
    const [first, second, third] = [numbers[a]!, numbers[b]!, numbers[c]!];
    this.separator = tokens.before[b]!;
    if (monthAt === a) return this.fixedDate(fullYear(third), first, second);
    if (monthAt === b) {
      if (digits[a] === 4) return this.fixedDate(first, second, third);
      return this.fixedDate(fullYear(third), second, first);
    }
    if (monthAt === c) return digits[a] === 4 && this.fixedDate(first, third, second);
    if (digits[a] === 4) return digits[b]! <= 2 && digits[c]! <= 2 && this.fixedDate(first, second, third);
    if (digits[a]! > 2 || digits[b]! > 2 || (digits[c] !== 4 && digits[c]! > 2)) return false;
    this.hasDate = true;
    this.first = first;
    this.second = second;
    this.third = third;
    return true;
  }
}
