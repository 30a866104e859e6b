const powersOfTen = Float64Array.from({ length: 23 }, (_, exponent) => 10 ** exponent);
/** Up to this many digits a mantissa is exact in a double (10^15 < 2^53). */
const mostDigits = 15;

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
    let at = from;
    let byte = bytes[at]!;
    const negative = byte === 45;
    if (negative) byte = bytes[++at]!;
    let mantissa = 0;
    const start = at;
    while (byte >= 48 && byte <= 57) {
      mantissa = mantissa * 10 + (byte - 48);
      byte = bytes[++at]!;
    }
    let digits = at - start;
    if (digits === 0) return Number.NaN;
    if (byte === decimalMark) {
      const fraction = at + 1;
      byte = bytes[++at]!;
      while (byte >= 48 && byte <= 57) {
        mantissa = mantissa * 10 + (byte - 48);
        byte = bytes[++at]!;
      }
      const decimals = at - fraction;
      digits += decimals;
      if (decimals === 0 || digits > mostDigits) return Number.NaN;
      this.next = at;
      mantissa /= powersOfTen[decimals]!;
      return negative ? -mantissa : mantissa;
    }
    if (digits > mostDigits) return Number.NaN;
    this.next = at;
    return negative ? -mantissa : mantissa;
  }
}
