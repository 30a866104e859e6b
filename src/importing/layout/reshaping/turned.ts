import { visibleText } from '../../values/clean-text.ts';
import type { Reshaping, Sample } from './reshaping.ts';

const fewestTimes = 4;

/**
 * A table turned on its side: the times stand in one row, and each row below is a point. Or a table of days: clock
 * times in the header, a date before each row, and the name of the point where there are several.
 */
export function findTurned({ rows, typeOf }: Sample): Reshaping | null {
  for (let row = 0; row < Math.min(rows.length - 1, 12); row++) {
    const { cells } = rows[row]!;
    if (cells.length <= fewestTimes) continue;
    for (const kind of ['stamp', 'clock'] as const) {
      const times: number[] = [];
      for (let column = 1; column < cells.length; column++)
        if (typeOf(row, column) === kind) times.push(column);
      const filled = cells.filter((cell, column) => column > 0 && visibleText(cell) !== '').length;
      if (times.length < fewestTimes || times.length < 0.9 * filled) continue;
      const below = rows.slice(row + 1).filter((each) => each.cells.length > times.length);
      if (below.length === 0) continue;
      const first = times[0]!;
      const labelled = below.filter(({ cells: each }) => visibleText(each[0]!) !== '').length;
      if (labelled < 0.9 * below.length) continue;
      const typesAt = (column: number) => below.map((each) => typeOf(rows.indexOf(each), column));
      const rowTypes = typesAt(0);
      const isDate = (column: number): boolean =>
        typesAt(column).filter((type) => type === 'date').length >= 0.8 * below.length;
      const date = Array.from({ length: first }, (_, column) => column).find(isDate);
      if (kind === 'stamp' && rowTypes.every((type) => type === 'text' || type === 'unit' || type === 'word'))
        return turned(row, cells, times, first);
      if (kind === 'clock' && date !== undefined)
        return ofDays(
          rows.slice(0, row).map((each) => each.cells),
          row,
          cells,
          times,
          date,
        );
    }
  }
  return null;
}

function turned(
  headerRow: number,
  cells: readonly string[],
  times: readonly number[],
  first: number,
): Reshaping {
  return {
    kind: 'turned',
    headerRow,
    header: ['time', 'point', 'value', 'unit'],
    choice: {
      about: 'direction of the table',
      chosen: 'each row is a point',
      because: 'the times stand side by side in one row',
      override: null,
    },
    begin: () => (row) => {
      const name = visibleText(row[0] ?? '');
      if (name === '' || row.length <= first) return [row];
      const unit = first > 1 ? visibleText(row[1] ?? '') : '';
      return times
        .filter((at) => visibleText(row[at] ?? '') !== '')
        .map((at) => [cells[at]!, name, row[at]!, unit]);
    },
  };
}

function ofDays(
  above: readonly (readonly string[])[],
  headerRow: number,
  cells: readonly string[],
  times: readonly number[],
  date: number,
): Reshaping {
  const labels = Array.from({ length: times[0]! }, (_, column) => column).filter((column) => column !== date);
  const title = above
    .map((row) => row.map(visibleText).filter((cell) => cell !== ''))
    .findLast((row) => row.length === 1);
  const titled = title?.[0] ?? 'value';
  const nameOf = (row: readonly string[]): string => {
    const words = labels.map((column) => visibleText(row[column] ?? '')).filter((word) => word !== '');
    return words.length === 0 ? titled : words.join(' ');
  };
  return {
    kind: 'table-of-days',
    headerRow,
    header: ['date', 'clock', 'point', 'value'],
    choice: {
      about: 'direction of the table',
      chosen: 'each row is a day',
      because:
        labels.length === 0
          ? 'times of day stand in the header and a date before each row'
          : 'times of day stand in the header, and a date and a point before each row',
      override: null,
    },
    begin: () => (row) =>
      row.length <= times[0]!
        ? [row]
        : times
            .filter((at) => visibleText(row[at] ?? '') !== '')
            .map((at) => [row[date]!, cells[at]!, nameOf(row), row[at]!]),
  };
}
