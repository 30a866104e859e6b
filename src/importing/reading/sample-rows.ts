import { rowCells } from '../dialect/row-cells.ts';
import type { SampleRow } from '../layout/table-plan.ts';
import { type Dialect, rowAt } from '../scan/row-span.ts';

/** Rows of the first look at a table. */
export const smallWindow = 30;

export interface PlacedRow extends SampleRow {
  /** Where the row begins in the buffer. */
  readonly from: number;
}

const mostCells = 400_000;
/** A wide table is known by fewer rows. */
const enoughRows = 14;
const enoughCells = 1600;

/** Up to `limit` rows from `from` on that are not blank, with their lines and places. */
export function placedRows(
  bytes: Uint8Array,
  from: number,
  end: number,
  firstLine: number,
  dialect: Dialect,
  atEnd: boolean,
  limit: number,
): PlacedRow[] {
  const rows: PlacedRow[] = [];
  let line = firstLine;
  let cells = 0;
  let at = from;
  while (at < end && rows.length < limit && cells < mostCells) {
    const row = rowAt(bytes, at, end, atEnd, dialect);
    if (row === null) break;
    if (row.to > row.from) {
      const found = rowCells(bytes, row, dialect);
      if (found.length > 1 || found[0]!.trim() !== '') rows.push({ cells: found, line, from: at });
      cells += found.length;
    }
    line += row.lines;
    at = row.next;
    if (limit <= smallWindow && rows.length >= enoughRows && cells >= enoughCells) break;
  }
  return rows;
}

/** Number of lines in `[from, to)`. */
export function linesBetween(bytes: Uint8Array, from: number, to: number): number {
  let lines = 0;
  for (let at = from; at < to; at++) {
    const byte = bytes[at]!;
    if (byte === 10 || (byte === 13 && (at + 1 >= to || bytes[at + 1] !== 10))) lines++;
  }
  return lines;
}
