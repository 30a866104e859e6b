import { powersOfTen } from '../values/number-bytes.ts';

/** Digits of a mantissa that surely fits 32 bits. */
const mostDigits = 9;

/**
 * Reads a run of plain numbers, cell after cell, into the columns of a wide table: the hot loop of the importer.
 * It stops before the first cell that is anything else (a word, a quote, a blank, many digits, the last cell of
 * the row), which the caller reads as it reads every cell.
 */
export class PlainRun {
  /** Column of the cell that it stopped before. */
  column = 0;

  /** Position of the cell that it stopped before. `targets` holds null where a cell is no value. */
  read(
    bytes: Uint8Array,
    from: number,
    column: number,
    targets: readonly (Float64Array | null)[],
    row: number,
    delimiter: number,
    decimalMark: number,
  ): number {
    const width = targets.length;
    const mark = decimalMark - 48;
    const end = delimiter - 48;
    let cell = from;
    while (column < width) {
      const target = targets[column]!;
      if (target === null) break;
      const negative = bytes[cell] === 45;
      let at = negative ? cell + 1 : cell;
      const start = at;
      let mantissa = 0;
      let digit = bytes[at]! - 48;
      while (digit >>> 0 <= 9) {
        mantissa = (Math.imul(mantissa, 10) + digit) | 0;
        digit = bytes[++at]! - 48;
      }
      if (at === start || at - start > mostDigits) break;
      let value = mantissa;
      if (digit === mark) {
        const point = at;
        digit = bytes[++at]! - 48;
        while (digit >>> 0 <= 9) {
          mantissa = (Math.imul(mantissa, 10) + digit) | 0;
          digit = bytes[++at]! - 48;
        }
        const decimals = at - point - 1;
        if (decimals === 0 || at - start - 1 > mostDigits) break;
        value = mantissa / powersOfTen[decimals]!;
      }
      if (digit !== end) break;
      target[row] = negative ? -value : value;
      cell = at + 1;
      column++;
    }
    this.column = column;
    return cell;
  }
}
