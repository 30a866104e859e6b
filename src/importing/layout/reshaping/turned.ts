import { visibleText } from '../../values/clean-text.ts';
import type { Reshaping, Sample } from './reshaping.ts';

const fewestTimes = 4;

/**
 * A table turned on its side: the times stand in one row, and each row below is a point. Or a table of days: clock
 * times in the header, a date before each row.
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
      const rowTypes = below.map((each) => typeOf(rows.indexOf(each), 0));
      if (kind === 'stamp' && rowTypes.every((type) => type === 'text' || type === 'unit' || type === 'word'))
        return turned(row, cells, times, first);
      if (kind === 'clock' && rowTypes.filter((type) => type === 'date').length >= 0.8 * below.length)
        return ofDays(
          rows.slice(0, row).map((each) => each.cells),
          row,
          cells,
          times,
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
): Reshaping {
  const title = above
    .map((row) => row.map(visibleText).filter((cell) => cell !== ''))
    .findLast((row) => row.length === 1);
  const name = title?.[0] ?? 'value';
  return {
    kind: 'table-of-days',
    headerRow,
    header: ['date', 'clock', 'point', 'value'],
    choice: {
      about: 'direction of the table',
      chosen: 'each row is a day',
      because: 'times of day stand in the header and a date before each row',
      override: null,
    },
    begin: () => (row) =>
      row.length <= times[0]!
        ? [row]
        : times
            .filter((at) => visibleText(row[at] ?? '') !== '')
            .map((at) => [row[0]!, cells[at]!, name, row[at]!]),
  };
}
