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
  rows(scope: MonthScope): Iterable<Row>;
}

type Cells = readonly Cell[];

/** A table of cells; numbers that are not known are null. */
export interface Table {
  readonly name: string;
  readonly title: string;
  readonly columns: readonly Pick<Column<never>, 'name' | 'unit' | 'definition' | 'formula'>[];
  /** Made when they are first asked for, and kept. */
  readonly rows: readonly Cells[];
  /** The rows that are kept, else one after the other, none of them kept: a month has thousands of defrosts. */
  eachRow(): Iterable<Cells>;
}

export function tableOf<Row>(definition: TableDefinition<Row>, scope: MonthScope): Table {
  const { name, title, columns } = definition;
  function* made(): Generator<Cells> {
    for (const row of definition.rows(scope))
      yield columns.map((column) => settled(column.cell(row, scope), column.decimals));
  }
  let kept: readonly Cells[] | null = null;
  return {
    name,
    title,
    columns,
    get rows() {
      kept ??= [...made()];
      return kept;
    },
    eachRow: () => kept ?? made(),
  };
}

function settled(cell: Cell, decimals: number | undefined): Cell {
  if (typeof cell !== 'number') return cell;
  if (!Number.isFinite(cell)) return null;
  if (decimals === undefined) return cell;
  const scale = 10 ** decimals;
  return Math.round(cell * scale) / scale + 0;
}

/** Keeps the row type between a definition's `rows` and its columns. */
export function defineTable<Row>(definition: TableDefinition<Row>): TableDefinition<Row> {
  return definition;
}
