import Papa from 'papaparse';
import type { Table } from './table.ts';

/** One table as CSV, `\n` between lines; cells that a spreadsheet would take for a formula are defused. */
export function tableCsv({ columns, rows }: Table): string {
  const text = Papa.unparse(
    { fields: columns.map(({ name }) => name), data: rows as Table['rows'][number][] },
    { escapeFormulae: true, newline: '\n' },
  );
  return `${text.trimEnd()}\n`;
}
