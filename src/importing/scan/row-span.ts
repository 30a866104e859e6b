/** How cells and rows of one file are written. */
export interface Dialect {
  /** Byte between cells. */
  readonly delimiter: number;
  /** Byte around cells that need it: 34 or 39. */
  readonly quote: number;
}

/** One row in a buffer: `[from, to)` without its line end; the next begins at `next`. */
export interface RowSpan {
  readonly from: number;
  readonly to: number;
  readonly next: number;
  /** Physical lines that it takes. */
  readonly lines: number;
  /** A quotation mark was opened and not closed within reach; the row is then its first line alone. */
  readonly unclosed: boolean;
  readonly quoted: boolean;
}

const farthestClosing = 65_536;
const mostLinesInCell = 64;
const newline = 10;
const carriageReturn = 13;

/**
 * The row that begins at `from`, quotes respected. `bytes` must end in a line end at `end`. Null where a
 * quoted cell runs to `end` and more bytes may follow (`atEnd` false).
 */
export function rowAt(
  bytes: Uint8Array,
  from: number,
  end: number,
  atEnd: boolean,
  dialect: Dialect,
): RowSpan | null {
  let at = from;
  let cellStart = true;
  let quoted = false;
  let lines = 1;
  while (at < end) {
    const byte = bytes[at]!;
    if (byte === newline || byte === carriageReturn) {
      return { from, to: at, next: afterLineEnd(bytes, at, end), lines, unclosed: false, quoted };
    }
    if (cellStart && byte === dialect.quote) {
      quoted = true;
      const closing = closingQuote(bytes, at, end, dialect);
      if (closing < 0) {
        if (!atEnd && end - at < farthestClosing) return null;
        return unclosedRow(bytes, from, end);
      }
      lines += linesIn(bytes, at, closing);
      if (lines > mostLinesInCell) return unclosedRow(bytes, from, end);
      at = closing + 1;
      cellStart = false;
      continue;
    }
    cellStart = byte === dialect.delimiter || (cellStart && byte === 32);
    at++;
  }
  return { from, to: end, next: end, lines, unclosed: false, quoted };
}

/** Position of the quote that closes the cell opened at `at`: one that a delimiter or line end follows. */
function closingQuote(bytes: Uint8Array, at: number, end: number, { delimiter, quote }: Dialect): number {
  const reach = Math.min(end, at + farthestClosing);
  for (let here = at + 1; here < reach; here++) {
    if (bytes[here] !== quote) continue;
    let next = here + 1;
    if (next < end && bytes[next] === quote) {
      here++;
      continue;
    }
    while (next < end && bytes[next] === 32 && delimiter !== 32) next++;
    const byte = next < end ? bytes[next]! : newline;
    if (byte === delimiter || byte === newline || byte === carriageReturn) return here;
  }
  return -1;
}

function unclosedRow(bytes: Uint8Array, from: number, end: number): RowSpan {
  let to = from;
  while (to < end && bytes[to] !== newline && bytes[to] !== carriageReturn) to++;
  return { from, to, next: afterLineEnd(bytes, to, end), lines: 1, unclosed: true, quoted: true };
}

export function afterLineEnd(bytes: Uint8Array, at: number, end: number): number {
  if (at >= end) return end;
  return bytes[at] === carriageReturn && at + 1 < end && bytes[at + 1] === newline ? at + 2 : at + 1;
}

function linesIn(bytes: Uint8Array, from: number, to: number): number {
  let lines = 0;
  for (let at = from; at < to; at++) {
    const byte = bytes[at]!;
    if (byte === newline || (byte === carriageReturn && bytes[at + 1] !== newline)) lines++;
  }
  return lines;
}
