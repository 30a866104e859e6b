import { visibleText } from '../../values/clean-text.ts';
import type { TablePlan } from '../table-plan.ts';
import type { Reshaping, Sample } from './reshaping.ts';

/** A table of one reading a row whose numbers and states stand in two columns, one of them filled in each row. */
export function findValueOrState({ rows, typeOf }: Sample, plan: TablePlan): Reshaping | null {
  const { long, header, headerRow } = plan;
  if (long === null || header === null || headerRow === null) return null;
  const data: number[] = [];
  for (let row = plan.firstDataRow; row < rows.length; row++)
    if (rows[row]!.cells.length === plan.width) data.push(row);
  const isFilled = (row: number, column: number): boolean => typeOf(row, column) !== 'empty';
  const state = header.findIndex(
    (_, column) =>
      column !== long.value &&
      column !== long.quality &&
      data.some((row) => isFilled(row, column)) &&
      data.some((row) => isFilled(row, long.value)) &&
      data.every((row) => isFilled(row, column) !== isFilled(row, long.value)),
  );
  if (state < 0) return null;
  return {
    kind: 'value-or-state',
    headerRow,
    header: header.with(state, ''),
    choice: {
      about: `columns “${header[long.value]}” and “${header[state]}”`,
      chosen: 'one column of values',
      because: 'each row fills one of the two',
      override: null,
    },
    begin: () => (cells) => {
      if (cells.length !== plan.width) return [cells];
      const value = visibleText(cells[long.value]!) === '' ? cells[state]! : cells[long.value]!;
      return [cells.with(long.value, value).with(state, '')];
    },
  };
}
