import Papa from 'papaparse';
import type { Cell, Table } from './table.ts';

const rowsAPart = 256;

/**
 * One table as CSV, some lines at a time, `\n` after each; cells that a spreadsheet would take for a formula are
 * defused.
 */
export function* tableCsv({ columns, rows }: Table): Generator<string> {
  yield linesOf([columns.map(({ name }) => name)]);
  for (let from = 0; from < rows.length; from += rowsAPart) {
    yield linesOf(rows.slice(from, from + rowsAPart));
  }
}

function linesOf(rows: Table['rows']): string {
  return `${Papa.unparse(rows as Cell[][], { escapeFormulae: true, newline: '\n' })}\n`;
}
