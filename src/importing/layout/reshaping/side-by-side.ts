import { findHeader } from '../../header/find-header.ts';
import { TimeReader } from '../../time/time-reader.ts';
import { visibleText } from '../../values/clean-text.ts';
import { readTimeText } from '../cell-types.ts';
import type { SampleRow } from '../table-plan.ts';
import type { TypeOf } from '../time-column.ts';
import type { Reshaping, Sample } from './reshaping.ts';

interface Block {
  readonly timeAt: number;
  readonly values: readonly number[];
}

const fewestRows = 3;

/**
 * Blocks side by side, each with a time column of its own (`Time,Air A,Time,Air B`): a channel keeps the time that
 * stands left of it. Two time columns in succession (local time and UTC, from and to) are no blocks.
 */
export function findSideBySide(
  { rows, typeOf }: Sample,
  firstDataRow: number,
  width: number,
): Reshaping | null {
  const data: number[] = [];
  for (let row = firstDataRow; row < rows.length && data.length < 60; row++) {
    if (rows[row]!.cells.length >= 4) data.push(row);
  }
  if (data.length < fewestRows) return null;
  const times: number[] = [];
  for (let column = 0; column < width; column++) if (runsOn(rows, data, column, typeOf)) times.push(column);
  if (times.length < 2) return null;
  const header = findHeader(rows, firstDataRow, width, times[0]!, typeOf);
  if (header === null) return null;
  const nameOf = (column: number): string => header.names[column] ?? '';
  const blocks = times.map((timeAt, index): Block => {
    const values: number[] = [];
    for (let column = timeAt + 1; column < (times[index + 1] ?? width); column++) {
      if (nameOf(column) !== '' || data.some((row) => typeOf(row, column) !== 'empty')) values.push(column);
    }
    return { timeAt, values };
  });
  if (times[0] !== 0 || blocks.some(({ values }) => values.length === 0)) return null;
  const names = pointNames(blocks.flatMap(({ values }) => values).map(nameOf));
  const units = blocks.flatMap(({ values }) => values).map((column) => header.units?.[column] ?? '');
  return {
    kind: 'side-by-side',
    headerRow: header.row,
    header: ['time', 'point', 'value', 'unit'],
    choice: {
      about: 'time of a reading',
      chosen: `that of its own block, of ${blocks.length}`,
      because: 'blocks with a time column each stand side by side',
      override: null,
    },
    begin: () => (cells) => readingsOf(cells, blocks, names, units),
  };
}

function readingsOf(
  cells: readonly string[],
  blocks: readonly Block[],
  names: readonly string[],
  units: readonly string[],
): readonly (readonly string[])[] {
  const readings: string[][] = [];
  let index = 0;
  for (const { timeAt, values } of blocks) {
    for (const column of values) {
      const value = cells[column] ?? '';
      if (visibleText(value) !== '')
        readings.push([cells[timeAt] ?? '', names[index]!, value, units[index]!]);
      index++;
    }
  }
  const hasTime = blocks.some(({ timeAt }) => /\d/u.test(cells[timeAt] ?? ''));
  return hasTime || cells.every((cell) => visibleText(cell) === '') ? readings : [cells];
}

/** Names as written, without the `Value` that stands under each, told apart where they repeat. */
function pointNames(written: readonly string[]): string[] {
  const alike = written.every((name) => /.\s(?:value|reading|wert|valeur)$/iu.test(name));
  const seen = new Map<string, number>();
  return written.map((name, index) => {
    const shown = alike ? name.replace(/\s\S+$/u, '') : name === '' ? `column ${index + 1}` : name;
    const number = (seen.get(shown) ?? 0) + 1;
    seen.set(shown, number);
    return number === 1 ? shown : `${shown} (${number})`;
  });
}

/** Whether a column holds stamps that nearly all run one way. */
function runsOn(
  rows: readonly SampleRow[],
  data: readonly number[],
  column: number,
  typeOf: TypeOf,
): boolean {
  const reader = new TimeReader(null);
  let stamps = 0;
  let filled = 0;
  let up = 0;
  let down = 0;
  let before = Number.NaN;
  for (const row of data) {
    const type = typeOf(row, column);
    if (type === 'empty') continue;
    filled++;
    if (type !== 'stamp') continue;
    stamps++;
    const time = readTimeText(reader, rows[row]!.cells[column]!);
    if (time > before) up++;
    else if (time < before) down++;
    before = time;
  }
  return stamps >= fewestRows && stamps >= 0.8 * filled && Math.max(up, down) >= 0.8 * (stamps - 1);
}
