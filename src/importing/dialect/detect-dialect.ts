import { cellType } from '../layout/cell-types.ts';
import { afterLineEnd, type Dialect, rowAt } from '../scan/row-span.ts';
import { readCell } from '../values/cell-reader.ts';
import type { DecimalMark } from '../values/number-text.ts';
import { rowCells } from './row-cells.ts';

export interface DialectVerdict {
  readonly dialect: Dialect;
  readonly because: string;
}

const semicolon = 59;
/** In order of preference where two fit equally well. */
const delimiters: readonly number[] = [9, semicolon, 44, 124];
const mostRows = 30;
const mostCells = 2000;

export const delimiterNames: { readonly [byte: number]: string } = {
  9: 'tab',
  44: 'comma',
  59: 'semicolon',
  124: 'pipe',
};

/** Rows of the sample under one dialect. */
function sampleRows(
  bytes: Uint8Array,
  from: number,
  end: number,
  dialect: Dialect,
  limit: number,
): string[][] {
  const rows: string[][] = [];
  let cells = 0;
  let at = from;
  while (at < end && rows.length < limit && cells < mostCells) {
    const row = rowAt(bytes, at, end, true, dialect);
    if (row === null) break;
    if (row.to > row.from) {
      const found = rowCells(bytes, row, dialect);
      rows.push(found);
      cells += found.length;
    }
    at = row.next;
  }
  return rows;
}

/**
 * The delimiter and quotation mark of a file from its first rows: the one that cuts most rows into the same
 * number of cells (at least two), most of which then read as times, numbers or words.
 */
export function detectDialect(bytes: Uint8Array, end: number): DialectVerdict {
  const stated = /^sep=(.)[\r\n]/u.exec(String.fromCharCode(...bytes.subarray(0, 6)))?.[1];
  const quote = commonQuote(bytes, end);
  if (stated !== undefined) {
    return { dialect: { delimiter: stated.charCodeAt(0), quote }, because: 'the first line says so' };
  }
  let best = { delimiter: 44, score: 0 };
  for (const from of startingPoints(bytes, end)) {
    for (const delimiter of delimiters) {
      if (!bytes.subarray(from, end).includes(delimiter)) continue;
      const score = scoreOf(sampleRows(bytes, from, end, { delimiter, quote }, mostRows));
      if (score > best.score) best = { delimiter, score };
    }
  }
  return {
    dialect: { delimiter: best.delimiter, quote },
    because: 'it cuts the rows into equal numbers of readable cells',
  };
}

/** The beginning, and the middle of the sample for a file with a long preamble. */
function startingPoints(bytes: Uint8Array, end: number): number[] {
  let middle = bytes.indexOf(10, end >> 1);
  if (middle < 0 || middle >= end) middle = bytes.indexOf(13, end >> 1);
  return middle > 0 && middle < end - 1 ? [0, afterLineEnd(bytes, middle, end)] : [0];
}

function scoreOf(rows: readonly string[][]): number {
  if (rows.length === 0) return 0;
  const widths = new Map<number, number>();
  for (const row of rows) if (row.length > 1) widths.set(row.length, (widths.get(row.length) ?? 0) + 1);
  let width = 0;
  let sharing = 0;
  for (const [cells, count] of widths) {
    if (count > sharing || (count === sharing && cells > width)) [width, sharing] = [cells, count];
  }
  if (width === 0) return 0;
  let readable = 0;
  let times = 0;
  let looked = 0;
  for (const row of rows) {
    if (row.length !== width) continue;
    let rowHasTime = 0;
    for (let at = 0; at < width; at += Math.max(1, Math.floor(width / 24))) {
      const type = cellType(row[at]!);
      looked++;
      if (type !== 'text') readable++;
      if (type === 'stamp' || type === 'date' || type === 'clock') rowHasTime = 1;
    }
    times += rowHasTime;
  }
  return (sharing / rows.length) * (0.1 + readable / looked) * (0.3 + times / sharing);
}

/** The mark that stands around more cells. */
function commonQuote(bytes: Uint8Array, end: number): number {
  let double = 0;
  let single = 0;
  for (let at = 1; at < end; at++) {
    const byte = bytes[at]!;
    const before = bytes[at - 1]!;
    if ((byte !== 34 && byte !== 39) || (before !== 10 && before !== 13 && !delimiters.includes(before)))
      continue;
    if (byte === 34) double++;
    else single++;
  }
  if (bytes[0] === 39) single++;
  return single > double ? 39 : 34;
}

export interface DecimalVerdict {
  readonly mark: DecimalMark;
  readonly because: string;
  /** True where cells such as `1,234` made a choice necessary. */
  readonly chosen: boolean;
}

/** The decimal mark of a file from the value cells of its first rows. */
export function detectDecimalMark(cells: Iterable<string>, delimiter: number): DecimalVerdict {
  let points = 0;
  let commas = 0;
  let openPoints = 0;
  let openCommas = 0;
  for (const cell of cells) {
    if (/^-?\d*$/u.test(cell)) continue;
    if (/^-?\d+\.(?!\d{3}$)\d+$/u.test(cell)) {
      points++;
      continue;
    }
    const { evidence } = readCell(cell, '.');
    if (evidence === 'point') points++;
    else if (evidence === 'comma') commas++;
    else if (evidence === 'open') {
      if (cell.includes(',')) openCommas++;
      else openPoints++;
    }
  }
  const chosen = openCommas > 0 || (openPoints > 0 && points === 0);
  if (commas > points) return { mark: ',', because: 'numbers such as 3,4 stand in the file', chosen };
  if (points > 0) return { mark: '.', because: 'numbers such as 3.4 stand in the file', chosen };
  if (openCommas > 0 && openPoints === 0 && delimiter !== 44) {
    return {
      mark: ',',
      because: 'every comma stands before three digits, and the cells are not separated by commas',
      chosen,
    };
  }
  return { mark: '.', because: 'nothing in the file says otherwise', chosen };
}
