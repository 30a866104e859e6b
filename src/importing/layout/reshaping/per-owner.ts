import { visibleText } from '../../values/clean-text.ts';
import type { TablePlan } from '../table-plan.ts';
import type { Reshaping, Sample } from './reshaping.ts';

const fewestRows = 6;

/**
 * One row a time and circuit (`Time,Circuit,Air,Defrost`): the text column tells rows of one time apart and belongs
 * to the names of the points.
 */
export function findPerOwner({ rows, typeOf }: Sample, plan: TablePlan): Reshaping | null {
  if (plan.long !== null || plan.header === null || plan.headerRow === null || plan.columns.length < 3)
    return null;
  const data: number[] = [];
  for (let row = plan.firstDataRow; row < rows.length && data.length < 200; row++) {
    if (rows[row]!.cells.length >= plan.width - 1) data.push(row);
  }
  if (data.length < fewestRows) return null;
  const cellOf = (row: number, column: number): string => visibleText(rows[row]!.cells[column] ?? '');
  const { at: timeAt, clockAt } = plan.time;
  const timeOf = (row: number): string =>
    `${cellOf(row, timeAt)} ${clockAt === null ? '' : cellOf(row, clockAt)}`;
  const times = new Set(data.map(timeOf)).size;
  if (times > 0.7 * data.length) return null;
  const owner = plan.columns.find(({ at }) => {
    if (data.some((row) => !['text', 'word', 'unit', 'number'].includes(typeOf(row, at)))) return false;
    if (data.filter((row) => typeOf(row, at) !== 'number').length < 0.9 * data.length) return false;
    const names = new Set(data.map((row) => cellOf(row, at)));
    const pairs = new Set(data.map((row) => `${timeOf(row)}\n${cellOf(row, at)}`));
    return names.size > 1 && names.size * 2 <= data.length && pairs.size === data.length;
  });
  if (owner === undefined) return null;
  const values = plan.columns.filter((column) => column !== owner);
  const { headerRow } = plan;
  return {
    kind: 'per-owner',
    headerRow,
    header: ['time', ...(clockAt === null ? [] : ['clock']), 'point', 'value', 'unit'],
    choice: {
      about: `column “${owner.name}”`,
      chosen: 'part of the names of the points',
      because: 'it tells rows of one time apart',
      override: null,
    },
    begin: () => (cells) => {
      const stamp = [cells[timeAt] ?? '', ...(clockAt === null ? [] : [cells[clockAt] ?? ''])];
      const name = visibleText(cells[owner.at] ?? '');
      if (name === '' || cells.length < plan.width || !/\d/u.test(stamp[0]!)) return [cells];
      return values
        .filter(({ at }) => visibleText(cells[at] ?? '') !== '')
        .map((column) => [
          ...stamp,
          `${name} ${column.name}`,
          cells[column.at]!,
          column.unitSource === 'units-row' ? column.unit! : '',
        ]);
    },
  };
}
