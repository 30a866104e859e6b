import type { SampleRow } from '../layout/table-plan.ts';
import { type TypeOf, timeWords } from '../layout/time-column.ts';
import { unwrapped, visibleText } from '../values/clean-text.ts';
import { isUnitFiller, unitNamed } from './unit-words.ts';

export interface FoundHeader {
  /** One shown name a column; empty strings where there is none. */
  readonly names: readonly string[];
  readonly units: readonly string[] | null;
  /** Position of the (lower) header row in the sample. */
  readonly row: number;
}

const farthestAbove = 8;

/**
 * The header of the table whose data begins at `firstData`: the nearest row above that fills the columns with
 * names, with a units row between or above, and a row of groups over it (`M01,,,M02,,`) where names repeat.
 * A row that could be units or kinds of values (`Time,A,C`) is the header where no other is.
 */
export function findHeader(
  rows: readonly SampleRow[],
  firstData: number,
  width: number,
  timeAt: number,
  typeOf: TypeOf,
): FoundHeader | null {
  let units: readonly string[] | null = null;
  let passed: FoundHeader | null = null;
  let looked = 0;
  for (let row = firstData - 1; row >= 0 && looked < farthestAbove; row--) {
    const cells = shown(rows[row]!.cells);
    const filled = cells.filter((cell) => cell !== '').length;
    if (filled === 0) continue;
    looked++;
    if (cells.every((cell) => /^[-–—=_*+ ]*$/u.test(cell))) continue;
    const named = isHeaderRow(cells, filled, width, timeAt, row, typeOf);
    if (isUnitsRow(cells) || cells.every(isUnitFiller)) {
      if (isUnitsRow(cells)) units ??= cells;
      if (named) passed ??= { names: shifted(cells, width, timeAt), units: null, row };
      continue;
    }
    if (!named || isRepeatedTitle(cells)) continue;
    const above = row > 0 ? shown(rows[row - 1]!.cells) : [];
    if (units === null && isUnitsRow(above)) units = above;
    const names = isGroupRow(above, cells, width, timeAt) ? combined(above, cells, timeAt) : cells;
    return {
      names: shifted(names, width, timeAt),
      units: units === null ? null : shifted(units, width, timeAt),
      row,
    };
  }
  return passed;
}

function shown(cells: readonly string[]): string[] {
  const texts = cells.map((cell) => unwrapped(visibleText(cell)));
  while (texts.length > 0 && texts.at(-1) === '') texts.pop();
  return texts;
}

/** Cells that are units, or belong among them; at least one is a unit. */
export function isUnitsRow(cells: readonly string[]): boolean {
  let units = 0;
  for (const [index, cell] of cells.entries()) {
    if (unitNamed(cell) !== null || (/^[[(].*[\])]$/u.test(cell) && cell.length < 12)) units++;
    else if (!isUnitFiller(cell) && index > 0) return false;
    else if (index === 0 && cell !== '' && !isUnitFiller(cell)) return false;
  }
  return units > 0;
}

function isHeaderRow(
  cells: readonly string[],
  filled: number,
  width: number,
  timeAt: number,
  row: number,
  typeOf: TypeOf,
): boolean {
  if (cells.length > width + 1 || cells.length < Math.max(2, Math.ceil(width * 0.5)) || filled < 2)
    return false;
  if (width >= 4 && filled < Math.ceil(cells.length * 0.4)) return false;
  let numeric = 0;
  let words = 0;
  for (let column = 0; column < cells.length; column++) {
    const type = typeOf(row, column);
    if (type === 'stamp') return false;
    if (type === 'number') numeric++;
    if (type === 'word' && column !== timeAt) words++;
  }
  // Readings beside a stamp that cannot be read are no names.
  if (/^\d/u.test(cells[timeAt] ?? '') && numeric + words >= filled - 1) return false;
  return numeric * 2 < filled || timeWords.test(cells[timeAt] ?? '');
}

/** One text in every column, over the times too: a title that a spreadsheet unmerged, and no name of a column. */
function isRepeatedTitle(cells: readonly string[]): boolean {
  return cells.length > 2 && cells[0] !== '' && cells.every((cell) => cell === cells[0]);
}

/** A row over the header that belongs to it: groups over names that repeat, or a second full row of names. */
function isGroupRow(
  above: readonly string[],
  header: readonly string[],
  width: number,
  timeAt: number,
): boolean {
  if (above.length < 2 || above.length > width + 1 || isRepeatedTitle(above)) return false;
  const filled = above.filter((cell, index) => cell !== '' && index !== timeAt).length;
  if (filled < 1 || above.some((cell) => /^[-+]?\d+(?:[.,]\d+)?$/u.test(cell))) return false;
  const names = header.filter((cell) => cell !== '');
  const repeats = new Set(names).size < names.length;
  const same = above.filter((cell, index) => cell !== '' && cell === header[index]).length;
  if (same * 2 > filled) return false;
  return repeats || filled >= 0.6 * (width - 1);
}

function combined(above: readonly string[], header: readonly string[], timeAt: number): string[] {
  let group = '';
  return header.map((name, index) => {
    if ((above[index] ?? '') !== '') group = above[index]!;
    if (index === timeAt || group === '' || name === group) return name;
    return name === '' ? group : `${group} ${name}`;
  });
}

/** A header one cell short whose data begins with an unnamed time column is moved one to the right. */
function shifted(names: readonly string[], width: number, timeAt: number): readonly string[] {
  if (names.length !== width - 1 || timeAt !== 0) return names;
  const first = names[0] ?? '';
  return /time|date|stamp|datum|zeit|heure|hora|fecha|epoch|^ts$|^t$|^$/iu.test(first) ||
    unitNamed(first) !== null ||
    isUnitFiller(first)
    ? names
    : ['', ...names];
}
