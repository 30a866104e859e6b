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
  /** A second row of names that was left out, and why; null for none. */
  readonly leftOut: NamesLeftOut | null;
}

export interface NamesLeftOut {
  /** By column; empty for none. */
  readonly cells: readonly string[];
  readonly because: string;
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
  const wrapped = wrappedHeader(rows, firstData, width, timeAt);
  if (wrapped !== null) return wrapped;
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
      if (named) passed ??= { names: shifted(cells, width, timeAt), units: null, row, leftOut: null };
      continue;
    }
    if (!named || isRepeatedTitle(cells)) continue;
    const above = row > 0 ? shown(rows[row - 1]!.cells) : [];
    if (units === null && isUnitsRow(above)) units = above;
    const isMade = row > 0 && above.some((_, column) => isTime(typeOf(row - 1, column)));
    const { names, leftOut } = isMade
      ? { names: cells, leftOut: null }
      : namesOfTwo(above, cells, width, timeAt);
    return {
      names: shifted(names, width, timeAt),
      units: units === null ? null : shifted(units, width, timeAt),
      row,
      leftOut,
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

/** Numbers of channels, inputs and registers, which are no names where there are others. */
const channelNumber =
  /^(?:ch(?:an(?:nel)?)?|[ad][io]|in(?:put)?|out(?:put)?|kanal|voie|canal|canale|tag|id|point|pt|slot|port|reg(?:ister)?|addr(?:ess)?|no|nr|#)?[ _.#:-]*\d{1,6}$/iu;

/** The names that the header and a row over it make together, or those of one where the other only repeats them otherwise. */
function namesOfTwo(
  above: readonly string[],
  header: readonly string[],
  width: number,
  timeAt: number,
): { readonly names: readonly string[]; readonly leftOut: NamesLeftOut | null } {
  const alone = { names: header, leftOut: null };
  const overTime = above[timeAt] ?? '';
  if (above.some((cell) => cell.endsWith(':')) || (timeWords.test(overTime) && !namesTime(overTime)))
    return alone;
  if (above.length < 2 || above.length > width + 1 || isRepeatedTitle(above) || isUnitsRow(above))
    return alone;
  const groups = above.filter((cell, index) => cell !== '' && index !== timeAt);
  const names = header.filter((cell, index) => cell !== '' && index !== timeAt);
  const same = above.filter((cell, index) => cell !== '' && cell === header[index]).length;
  if (groups.length < 1 || same * 2 > groups.length) return alone;
  const repeats = new Set(names).size < names.length;
  const isFull = groups.length >= 0.6 * (width - 1) && new Set(groups).size === groups.length;
  const areNumbers = (cells: readonly string[]): boolean =>
    cells.length > 1 && cells.every((cell) => channelNumber.test(cell));
  if (areNumbers(groups) && !repeats)
    return areNumbers(names) ? alone : { names: header, leftOut: leftOut(above, 'numbers of channels') };
  if (isFull && areNumbers(names))
    return { names: above, leftOut: leftOut(header, 'numbers of channels below names') };
  if (above.some((cell) => /^[-+]?\d+(?:[.,]\d+)?$/u.test(cell))) return alone;
  const bothWhole = namesTime(above[timeAt] ?? '') && namesTime(header[timeAt] ?? '');
  if (isFull && !repeats && bothWhole)
    return { names: above, leftOut: leftOut(header, 'a description below names') };
  const spans = isOverColumns(above, header, timeAt) && groups.length > 1;
  return repeats || groups.length >= 0.6 * (width - 1) || spans
    ? { names: combined(above, header, timeAt), leftOut: null }
    : alone;
}

function leftOut(cells: readonly string[], what: string): NamesLeftOut {
  return { cells, because: `the other row holds ${what}` };
}

function isTime(type: string): boolean {
  return type === 'stamp' || type === 'date' || type === 'clock';
}

/** `Time`, `Date and time`, but no label of a remark such as `Time zone` or `Start time`. */
function namesTime(cell: string): boolean {
  return (
    timeWords.test(cell) && !/zone|interval|start|begin|end|stop|print|export|period|range|span/iu.test(cell)
  );
}

/** Groups of merged cells: nothing but the time, or nothing at all, stands over the time, and the header has gaps that they fill. */
function isOverColumns(above: readonly string[], header: readonly string[], timeAt: number): boolean {
  const overTime = above[timeAt] ?? '';
  if (overTime !== '' && !timeWords.test(overTime)) return false;
  return (
    (header[timeAt] ?? '') === '' ||
    overTime === '' ||
    above.some((cell, at) => cell !== '' && (header[at] ?? '') === '')
  );
}

const wrapWidths = new Set([64, 72, 76, 77, 78, 79, 80, 100, 120, 128, 132, 160, 250, 255, 256, 1000]);

/** A header that something on the way cut into two or three lines: glued together it has a name for every column. */
function wrappedHeader(
  rows: readonly SampleRow[],
  firstData: number,
  width: number,
  timeAt: number,
): FoundHeader | null {
  for (const count of [2, 3]) {
    if (firstData < count) continue;
    const pieces = rows.slice(firstData - count, firstData).map(({ cells }) => cells);
    const [first, ...others] = pieces as [readonly string[], ...(readonly string[])[]];
    if (pieces.reduce((sum, cells) => sum + cells.length, 0) - (count - 1) !== width) continue;
    const isWhole = (cells: readonly string[]): boolean =>
      cells.length >= width || cells.some((cell) => /^[-+]?\d+(?:[.,]\d+)?$/u.test(cell));
    if (pieces.some(isWhole) || !timeWords.test(first[timeAt] ?? '')) continue;
    const lengths = pieces.slice(0, -1).map((cells) => cells.join(',').length);
    const isCut = wrapWidths.has(lengths[0]!) || (lengths.length > 1 && new Set(lengths).size === 1);
    const glued = others.reduce<readonly string[]>(
      (before, cells) => [
        ...before.slice(0, -1),
        `${before.at(-1)!}${isCut ? '' : ' '}${cells[0]!}`,
        ...cells.slice(1),
      ],
      first,
    );
    return {
      names: shown(glued),
      units: null,
      row: firstData - 1,
      leftOut: {
        cells: others[0]!.map((cell) => cell.trim()),
        because: 'the header was cut into lines, and glued it has a name for every column',
      },
    };
  }
  return null;
}

function combined(above: readonly string[], header: readonly string[], timeAt: number): string[] {
  let group = '';
  return Array.from({ length: Math.max(header.length, above.length) }, (_, index) => {
    const name = header[index] ?? '';
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
