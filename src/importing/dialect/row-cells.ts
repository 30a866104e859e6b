import Papa from 'papaparse';
import { textOf } from '../encoding/transcode.ts';
import type { Dialect, RowSpan } from '../scan/row-span.ts';

/** The cells of one row as text. Rows with quotes go to papaparse; those without are split at the delimiter. */
export function rowCells(bytes: Uint8Array, row: RowSpan, dialect: Dialect): string[] {
  const text = textOf(bytes, row.from, row.to);
  const delimiter = String.fromCharCode(dialect.delimiter);
  if (!row.quoted) return text.split(delimiter);
  if (row.unclosed) return text.split(delimiter).map((cell) => withoutStrayQuote(cell, dialect));
  return quotedCells(text, delimiter, String.fromCharCode(dialect.quote));
}

function quotedCells(text: string, delimiter: string, quote: string): string[] {
  const parsed = Papa.parse<string[]>(tightened(text, delimiter, quote), {
    delimiter,
    quoteChar: quote,
    escapeChar: quote,
    newline: '\n',
    header: false,
  });
  return parsed.data[0] ?? [''];
}

/**
 * Takes out blanks between a delimiter and an opening quote, and those behind the last quote, which papaparse would
 * take for part of the cell.
 */
function tightened(row: string, delimiter: string, quote: string): string {
  let end = row.length;
  while (end > 0 && row[end - 1] === ' ') end--;
  const text = row[end - 1] === quote ? row.slice(0, end) : row;
  if (!text.includes(` ${quote}`)) return text;
  let result = '';
  let open = false;
  let cellStart = true;
  for (let at = 0; at < text.length; at++) {
    const mark = text[at]!;
    if (open) {
      if (mark === quote) open = text[at + 1] === quote ? open : false;
      if (mark === quote && text[at + 1] === quote) result += text[at++];
      result += mark;
      continue;
    }
    if (cellStart && mark === ' ' && firstBehindBlanks(text, at) === quote) continue;
    if (cellStart && mark === quote) open = true;
    cellStart = mark === delimiter;
    result += mark;
  }
  return result;
}

const mostBlanks = 64;

function firstBehindBlanks(text: string, from: number): string {
  let at = from;
  while (at < from + mostBlanks && text[at] === ' ') at++;
  return text[at] ?? '';
}

function withoutStrayQuote(cell: string, dialect: Dialect): string {
  const quote = String.fromCharCode(dialect.quote);
  const trimmed = cell.trim();
  const start = trimmed.startsWith(quote) ? 1 : 0;
  const end = trimmed.endsWith(quote) && trimmed.length > 1 ? trimmed.length - 1 : trimmed.length;
  return trimmed.slice(start, end);
}
