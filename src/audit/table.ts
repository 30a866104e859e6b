import type { MonthScope } from './scope.ts';

export type Cell = string | number | boolean | null;

/** One column of a table: what stands in it, and how it was computed. The reference page is made from these. */
export interface Column<Row> {
  readonly name: string;
  /** `site temperature`, `site temperature difference`, `min`, `h`, `K·h`, `1` (a share), `count`, `local time` … */
  readonly unit: string;
  readonly definition: string;
  readonly formula: string;
  /** Decimals that numbers are rounded to; left as they are when not given. */
  readonly decimals?: number;
  cell(row: Row, scope: MonthScope): Cell;
}

export interface TableDefinition<Row = never> {
  /** Also the name of the file, `probes` for `probes.csv`. */
  readonly name: string;
  readonly title: string;
  /** `one probe on one local day`. */
  readonly oneRow: string;
  readonly columns: readonly Column<Row>[];
  rows(scope: MonthScope): readonly Row[];
}

/** A table with its cells; numbers that are not known are null. */
export interface Table {
  readonly name: string;
  readonly title: string;
  readonly columns: readonly Pick<Column<never>, 'name' | 'unit' | 'definition' | 'formula'>[];
  readonly rows: readonly (readonly Cell[])[];
}

export function fillTable<Row>(definition: TableDefinition<Row>, scope: MonthScope): Table {
  const { name, title, columns } = definition;
  const rows = definition
    .rows(scope)
    .map((row) => columns.map((column) => settled(column.cell(row, scope), column.decimals)));
  return { name, title, columns, rows };
}

function settled(cell: Cell, decimals: number | undefined): Cell {
  if (typeof cell !== 'number') return cell;
  if (!Number.isFinite(cell)) return null;
  return decimals === undefined ? cell : Number(cell.toFixed(decimals)) + 0;
}

/** Keeps the row type between a definition's `rows` and its columns. */
export function defineTable<Row>(definition: TableDefinition<Row>): TableDefinition<Row> {
  return definition;
}
