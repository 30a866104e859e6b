import { looksLikeHeader } from '../../header/looks-like-header.ts';
import { visibleText } from '../../values/clean-text.ts';
import type { Reshaping, Sample } from './reshaping.ts';

const fewestGroups = 2;

/**
 * A time that stands once over a group of rows, one a point, as a spreadsheet writes merged cells: it is that of the
 * rows below it. Only where the texts of a group differ, so that no row of another time can hide among them.
 */
export function findCarriedStamp({ rows, typeOf }: Sample): Reshaping | null {
  const headerRow = rows.findIndex(
    ({ cells }) => cells.length > 2 && looksLikeHeader(cells.map(visibleText)),
  );
  if (headerRow < 0) return null;
  const width = rows[headerRow]!.cells.length;
  const data: number[] = [];
  for (let row = headerRow + 1; row < rows.length; row++)
    if (rows[row]!.cells.length === width) data.push(row);
  const timeAt = [0, 1, 2].find((column) => data.length > 0 && typeOf(data[0]!, column) === 'stamp');
  if (timeAt === undefined) return null;
  const empty = data.filter((row) => typeOf(row, timeAt) === 'empty').length;
  const stamped = data.filter((row) => typeOf(row, timeAt) === 'stamp').length;
  if (stamped < fewestGroups || empty < stamped || empty + stamped < data.length) return null;
  const pointAt = Array.from({ length: width }, (_, column) => column).find(
    (column) =>
      column !== timeAt &&
      data.every((row) => ['text', 'unit', 'word'].includes(typeOf(row, column))) &&
      differInGroups(
        data,
        (row) => typeOf(row, timeAt) === 'stamp',
        (row) => rows[row]!.cells[column]!,
      ),
  );
  if (pointAt === undefined) return null;
  const begin = () => {
    let stamp = '';
    let seen = new Set<string>();
    return (cells: readonly string[]): readonly (readonly string[])[] => {
      if (cells.length !== width) return [cells];
      const written = visibleText(cells[timeAt]!);
      const point = visibleText(cells[pointAt]!);
      if (written !== '') [stamp, seen] = [written, new Set()];
      else if (seen.has(point)) stamp = '';
      seen.add(point);
      return [cells.with(timeAt, stamp)];
    };
  };
  return {
    kind: 'carried-stamp',
    headerRow,
    header: rows[headerRow]!.cells.map(visibleText),
    choice: {
      about: 'time of rows without one',
      chosen: 'that of the row above',
      because: 'only the first row of each group of points carries a time',
      override: null,
    },
    begin,
  };
}

function differInGroups(
  data: readonly number[],
  begins: (row: number) => boolean,
  textOf: (row: number) => string,
): boolean {
  let seen = new Set<string>();
  for (const row of data) {
    if (begins(row)) seen = new Set();
    if (seen.has(textOf(row))) return false;
    seen.add(textOf(row));
  }
  return true;
}
