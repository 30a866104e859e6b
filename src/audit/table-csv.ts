import Papa from 'papaparse';
import type { Cell, Table } from './table.ts';

const rowsAPart = 256;

/**
 * One table as CSV, some lines at a time, `\n` after each; cells that a spreadsheet would take for a formula are
 * defused.
 */
export function* tableCsv(table: Table): Generator<string> {
  yield linesOf([table.columns.map(({ name }) => name)]);
  let part: (readonly Cell[])[] = [];
  for (const row of table.eachRow()) {
    part.push(row);
    if (part.length < rowsAPart) continue;
    yield linesOf(part);
    part = [];
  }
  if (part.length > 0) yield linesOf(part);
}

function linesOf(rows: readonly (readonly Cell[])[]): string {
  return `${Papa.unparse(rows as Cell[][], { escapeFormulae: true, newline: '\n' })}\n`;
}
