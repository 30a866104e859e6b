import type { Cell, Table } from '../../audit/table.ts';

/** A table read by the names of its columns. */
export interface TableView {
  readonly rows: readonly RowView[];
}

export type RowView = (name: string) => Cell;

export function viewOf({ columns, rows, name: table }: Table): TableView {
  const places = new Map(columns.map(({ name }, k) => [name, k]));
  return {
    rows: rows.map((row) => (name) => {
      const place = places.get(name);
      if (place === undefined) throw new RangeError(`The table ${table} has no column ${name}.`);
      return row[place]!;
    }),
  };
}

/** The known numbers of one column. */
export function numbersOf(rows: readonly RowView[], name: string): number[] {
  return rows.map((row) => row(name)).filter((cell) => typeof cell === 'number');
}

/** Rows with the same cells in `names`, in the order in which they first come. */
export function groupRows(rows: readonly RowView[], names: readonly string[]): RowView[][] {
  return groupBy(rows, (row) => JSON.stringify(names.map((name) => row(name))));
}

/** Rows with the same key, in the order in which they first come. */
export function groupBy(rows: readonly RowView[], keyOf: (row: RowView) => string): RowView[][] {
  const groups = new Map<string, RowView[]>();
  for (const row of rows) {
    const key = keyOf(row);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [row]);
    else group.push(row);
  }
  return [...groups.values()];
}
