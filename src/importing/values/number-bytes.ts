/** Exact in a double. */
export const powersOfTen = Float64Array.from({ length: 23 }, (_, exponent) => 10 ** exponent);
/** Up to this many digits a mantissa is exact in a double (10^15 < 2^53), and in 32 bits (10^9 < 2^31). */
const mostDigits = 15;
const mostDigitsIn32Bits = 9;

/**
 * Reads one plain number (`-12.50`) from bytes. The mantissa is an exact integer of at most 15 digits and is
 * divided by an exact power of ten, so the result is the correctly rounded one: the same as `Number(text)`
 * (W. D. Clinger, How to read floating point numbers accurately, 1990). Everything else is left to others.
 */
export class NumberBytes {
  /** Position after the number. */
  next = 0;

  /**
   * The number that starts at `from`, ending before the first byte that belongs to none; NaN where there is
   * no plain one. The byte after it is for the caller to judge.
   */
  read(bytes: Uint8Array, from: number, decimalMark: number): number {
    const negative = bytes[from] === 45;
    const start = negative ? from + 1 : from;
    let at = start;
    let mantissa = 0;
    let digit = bytes[at]! - 48;
    while (digit >>> 0 <= 9) {
      mantissa = (Math.imul(mantissa, 10) + digit) | 0;
      digit = bytes[++at]! - 48;
    }
    const whole = at - start;
    let decimals = 0;
    if (digit === decimalMark - 48) {
      const point = at;
      digit = bytes[++at]! - 48;
      while (digit >>> 0 <= 9) {
        mantissa = (Math.imul(mantissa, 10) + digit) | 0;
        digit = bytes[++at]! - 48;
      }
      decimals = at - point - 1;
      if (decimals === 0) return Number.NaN;
    }
    if (whole === 0) return Number.NaN;
    this.next = at;
    const digits = whole + decimals;
    if (digits > mostDigitsIn32Bits) {
      return digits > mostDigits ? Number.NaN : longNumber(bytes, start, at, decimals, negative);
    }
    const value = decimals === 0 ? mantissa : mantissa / powersOfTen[decimals]!;
    return negative ? -value : value;
  }
}

/** The same for 10 to 15 digits, which do not fit 32 bits. */
function longNumber(
  bytes: Uint8Array,
  from: number,
  to: number,
  decimals: number,
  negative: boolean,
): number {
  let mantissa = 0;
  for (let at = from; at < to; at++) {
    const digit = bytes[at]! - 48;
    if (digit >>> 0 <= 9) mantissa = mantissa * 10 + digit;
  }
  const value = mantissa / powersOfTen[decimals]!;
  return negative ? -value : value;
}
