import { isFiller, monthOf, zoneOffsetOf } from './words.ts';

const mostNumbers = 12;

/**
 * The numbers of one time stamp and what stands before each, read from bytes. Reused for every cell, so that
 * reading a million stamps allocates nothing.
 */
export class TimeTokens {
  count = 0;
  readonly numbers = new Float64Array(mostNumbers);
  readonly digits = new Int32Array(mostNumbers);
  /** Byte before each number: 0 at the start, 32 for blanks, 84 for T, 104 for h. */
  readonly before = new Int32Array(mostNumbers);
  /** Which number is a month name, or -1. */
  monthAt = -1;
  /** -1 none, 0 AM, 12 PM. */
  meridiem = -1;
  /** Minutes from UTC by a zone word or Z; NaN none. */
  zoneMinutes = Number.NaN;
  leadingT = false;

  /** False where the cell holds something that no time stamp has. */
  read(bytes: Uint8Array, from: number, to: number): boolean {
    this.count = 0;
    this.monthAt = -1;
    this.meridiem = -1;
    this.zoneMinutes = Number.NaN;
    this.leadingT = false;
    let before = 0;
    let at = from;
    while (at < to) {
      const byte = bytes[at]!;
      if (byte >= 48 && byte <= 57) {
        let value = 0;
        const start = at;
        for (let digit = byte; digit >= 48 && digit <= 57; digit = at < to ? bytes[at]! : 0) {
          value = value * 10 + (digit - 48);
          at++;
        }
        if (this.count === mostNumbers || at - start > 20) return false;
        this.numbers[this.count] = value;
        this.digits[this.count] = at - start;
        this.before[this.count++] = before;
        before = 0;
        continue;
      }
      if (isLetter(byte)) {
        const start = at;
        while (at < to && isLetter(bytes[at]!)) at++;
        const separator = this.word(bytes, start, at, before);
        if (separator < 0) return false;
        if (separator > 0) before = separator;
        continue;
      }
      at++;
      if (byte === 32 || byte === 9) {
        if (before === 0) before = 32;
        // `03.09.2026 00:00 - 00:05` names two times and no offset.
        else if (before === 45 && this.count > 4 && this.before[this.count - 1] === 58) return false;
      } else if (isSeparator(byte)) {
        if (before !== 0 && before !== 32 && !mayFollow(byte, before)) return false;
        before = before === 84 || (byte === 44 && before !== 0) ? before : byte;
      } else return false;
    }
    return this.count > 0;
  }

  /** Takes a word; the separator that it stands for, 0 for none, -1 where it fits no time stamp. */
  private word(bytes: Uint8Array, from: number, to: number, before: number): number {
    const length = to - from;
    const first = bytes[from]! | 32;
    if (length === 1) {
      if (first === 116 && this.count > 0) {
        this.leadingT = true;
        return 84;
      }
      if (first === 122 && this.count > 0) {
        this.zoneMinutes = 0;
        return 0;
      }
      if (first === 97 || first === 112) {
        // `6:30 p.` is a clock; the `à` of `3 mars 2026 à 6:30` stands before one.
        if (this.count < 2 || this.before[this.count - 1] !== 58) return first === 97 ? 32 : -1;
        this.meridiem = first === 97 ? 0 : 12;
        return 0;
      }
      if (first === 109 && this.meridiem >= 0) return 0;
      if (first === 104) return 104;
      return (first === 115 || first === 109) && this.count > 0 ? 104 : -1;
    }
    if (length === 2 && (first === 97 || first === 112) && (bytes[from + 1]! | 32) === 109) {
      this.meridiem = first === 97 ? 0 : 12;
      return 0;
    }
    let word = '';
    for (let at = from; at < to && word.length < 12; at++) word += String.fromCharCode(bytes[at]! | 32);
    const month = monthOf(word);
    if (month > 0 && this.monthAt < 0 && this.count < mostNumbers) {
      this.monthAt = this.count;
      this.numbers[this.count] = month;
      this.digits[this.count] = 2;
      this.before[this.count++] = before;
      return 32;
    }
    const zone = zoneOffsetOf(word);
    if (zone !== undefined && this.count > 0) {
      this.zoneMinutes = zone;
      return 0;
    }
    if (isFiller(word)) return 32;
    return this.hasOffset() ? 0 : -1;
  }

  /** Behind an offset stands the name of the zone: `-06:00 Denver`, `-05:00 New_York`, `Z London` (Project Haystack). */
  private hasOffset(): boolean {
    const { before, count } = this;
    if (!Number.isNaN(this.zoneMinutes)) return true;
    const sign = count > 5 && before[count - 1] === 58 ? before[count - 2] : 0;
    return sign === 43 || sign === 45;
  }
}

function isLetter(byte: number): boolean {
  return (byte >= 65 && byte <= 90) || (byte >= 97 && byte <= 122);
}

/** - / . : , + _ */
function isSeparator(byte: number): boolean {
  return (
    byte === 45 || byte === 47 || byte === 46 || byte === 58 || byte === 44 || byte === 43 || byte === 95
  );
}

/** `1. September`, `Sept. 1`, `Sep, 1`, `GMT+02`: two separators that may stand together. */
function mayFollow(byte: number, before: number): boolean {
  return byte === 44 || byte === 46 || before === 46 || before === 44;
}
