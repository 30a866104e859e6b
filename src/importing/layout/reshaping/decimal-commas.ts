import { findHeader } from '../../header/find-header.ts';
import { ImportRefusal } from '../../readings.ts';
import { visibleText } from '../../values/clean-text.ts';
import { valueWords } from '../long-columns.ts';
import type { TablePlan } from '../table-plan.ts';
import type { Reshaping, Sample } from './reshaping.ts';

const wholeNumber = /^[-+\u2212]?\d{1,6}$/u;
const decimals = /^\d{1,6}$/u;
const fewestRows = 3;
const mostRows = 200;
const mostPatterns = 200;
/** A pattern must leave the columns so much smoother than every other one. */
const smoother = 0.6;

/** For each column behind the time, whether its values are written in two pieces. */
type Pattern = readonly boolean[];

/**
 * Decimal commas without quotes in a table whose cells commas separate: rows with more pieces than the header has
 * names, where one way of joining pieces fits every row, or makes far smoother columns than any other. Throws
 * ImportRefusal where numbers are plainly cut but not which of them.
 */
export function findDecimalCommas(
  { rows, typeOf }: Sample,
  { firstDataRow, time }: TablePlan,
  mark: '.' | ',',
  fileName: string,
): Reshaping | null {
  const header = findHeader(rows, firstDataRow, rows[firstDataRow]!.cells.length, time.at, typeOf);
  if (header === null || time.at !== 0 || time.clockAt !== null) return null;
  const width = header.names.length;
  const data = rows
    .slice(firstDataRow, firstDataRow + mostRows)
    .map(({ cells }) => withoutTrail(cells.map(visibleText), width))
    .filter((cells) => cells.length >= width && /\d/u.test(cells[0]!));
  const longer = data.filter(({ length }) => length > width);
  if (longer.length < fewestRows || longer.length < 0.2 * data.length) return null;
  const usual = commonest(longer.map(({ length }) => length));
  const full = longer.filter(({ length }) => length === usual);
  if (usual > 2 * width - 1 || full.length < fewestRows) return null;
  const pieces = full.map((cells) => cells.slice(1));
  const patterns = patternsThatFit(pieces, width - 1);
  const { line } = rows[firstDataRow]!;
  if (patterns.length === 0) {
    if (areCutNumbers(longer, width)) throw unclear(fileName, line, width);
    return null;
  }
  const isLong =
    patterns.length === 1 &&
    patterns[0]!.every((isCut, at) => !isCut || valueWords.test(header.names[at + 1]!));
  const chosen = isLong ? patterns[0]! : choosePattern(pieces, patterns, width - 1);
  if (chosen === null) return null;
  if (chosen === 'unclear') throw unclear(fileName, line, width);
  const named = chosen.flatMap((isCut, at) => (isCut ? [header.names[at + 1]!] : []));
  return {
    kind: `decimal-commas ${chosen.map(Number).join('')}`,
    headerRow: header.row,
    header: header.names,
    choice: {
      about: 'commas in the rows',
      chosen: `decimal commas in ${named
        .slice(0, 4)
        .map((name) => `“${name}”`)
        .join(', ')}${named.length > 4 ? ' …' : ''}`,
      because:
        patterns.length === 1
          ? `the rows have ${usual} pieces under ${width} names, and they can be joined in one way only`
          : `the rows have ${usual} pieces under ${width} names, and joined so the columns run on smoothly`,
      override: '--decimal-point',
    },
    begin: () => (cells) => {
      const glued = joined(withoutTrail(cells, width), chosen, mark);
      return [glued ?? cells];
    },
  };
}

function commonest(lengths: readonly number[]): number {
  const counts = new Map<number, number>();
  for (const length of lengths) counts.set(length, (counts.get(length) ?? 0) + 1);
  return [...counts].reduce((best, each) => (each[1] > best[1] ? each : best))[0];
}

/** Rows of different lengths, all beyond the header's, that hold nothing but whole numbers, states and blanks. */
function areCutNumbers(rows: readonly (readonly string[])[], width: number): boolean {
  const plain = rows.filter((row) => row.slice(1).every((piece) => /^(?:[-+]?\d{1,6}|\p{L}*)$/u.test(piece)));
  return new Set(plain.map(({ length }) => length)).size > 1 && plain.length > 0.8 * rows.length && width > 2;
}

function unclear(fileName: string, line: number, width: number): ImportRefusal {
  return new ImportRefusal(
    'decimal-commas-unclear',
    `${fileName} line ${line}: the rows have more pieces than the header has names (${width}), so numbers seem to be written with decimal commas while commas also separate the cells, and which belong together cannot be told. Export with semicolons or with decimal points; give --decimal-point if every comma separates cells.`,
  );
}

/** Without empty cells behind those that a row may have. */
function withoutTrail(cells: readonly string[], width: number): readonly string[] {
  let end = cells.length;
  while (end > width && visibleText(cells[end - 1]!) === '') end--;
  return cells.slice(0, end);
}

/** Every way to join pieces into `columns` values that fits all rows. */
function patternsThatFit(rows: readonly (readonly string[])[], columns: number): Pattern[] {
  const count = rows[0]!.length;
  const cuts = Array.from({ length: count - 1 }, (_, at) =>
    rows.every((row) => (wholeNumber.test(row[at]!) && decimals.test(row[at + 1]!)) || isEmptyPair(row, at)),
  );
  const alone = Array.from({ length: count }, (_, at) => rows.every((row) => !/^0\d/u.test(row[at]!)));
  const found: Pattern[] = [];
  const extend = (pattern: boolean[], at: number): void => {
    if (found.length >= mostPatterns) return;
    const left = columns - pattern.length;
    if (left === 0) {
      if (at === count) found.push([...pattern]);
      return;
    }
    if (count - at < left || count - at > 2 * left) return;
    if (cuts[at] === true) extend([...pattern, true], at + 2);
    if (alone[at] === true) extend([...pattern, false], at + 1);
  };
  extend([], 0);
  return found;
}

/** A missing value may keep both its pieces. */
function isEmptyPair(row: readonly string[], at: number): boolean {
  return row[at] === '' && row[at + 1] === '';
}

function choosePattern(
  rows: readonly (readonly string[])[],
  patterns: readonly Pattern[],
  columns: number,
): Pattern | 'unclear' | null {
  const uncut = roughness(rows.map((row) => row.map(numberOf)));
  const rough = patterns
    .map((pattern) => ({ pattern, value: roughness(rows.map((row) => valuesOf(row, pattern))) }))
    .sort((a, b) => a.value - b.value);
  const [best, next] = rough;
  const everyColumn = rows[0]!.length === 2 * columns;
  // Every value of several in two pieces is no chance; else columns without a name are the likelier reading.
  if (everyColumn && columns > 1) return best!.pattern;
  if (best!.value > (everyColumn ? 1.5 : 1) * uncut) return null;
  const isSmoother = best!.value < smoother * uncut;
  if (next !== undefined && best!.value >= smoother * next.value) return isSmoother ? 'unclear' : null;
  return everyColumn || isSmoother ? best!.pattern : null;
}

function valuesOf(row: readonly string[], pattern: Pattern): number[] {
  let at = 0;
  return pattern.map((isCut) => {
    const value = isCut ? numberOf(`${row[at]}.${row[at + 1]}`) : numberOf(row[at]!);
    at += isCut ? 2 : 1;
    return value;
  });
}

function numberOf(text: string): number {
  return /^[-+\u2212]?\d/u.test(text) ? Number(text.replace('\u2212', '-')) : Number.NaN;
}

/** Mean over the columns of the mean step from row to row in shares of the column's range; 0 for one that stands still. */
function roughness(rows: readonly (readonly number[])[]): number {
  let sum = 0;
  let columns = 0;
  for (let at = 0; at < rows[0]!.length; at++) {
    const values = rows.map((row) => row[at]!).filter((value) => !Number.isNaN(value));
    if (values.length < 2) continue;
    const range = Math.max(...values) - Math.min(...values);
    let steps = 0;
    for (let index = 1; index < values.length; index++)
      steps += Math.abs(values[index]! - values[index - 1]!);
    sum += range === 0 ? 0 : steps / (values.length - 1) / range;
    columns++;
  }
  return columns === 0 ? 0 : sum / columns;
}

/** The row with its pieces joined; null where it does not fit the pattern. A number may have come without decimals. */
function joined(cells: readonly string[], pattern: Pattern, mark: string): string[] | null {
  const surplus = cells.length - 1 - pattern.length;
  const twos = pattern.filter(Boolean).length;
  const found: string[][] = [];
  const extend = (values: readonly string[], at: number): void => {
    if (found.length > 1) return;
    if (values.length === pattern.length) {
      if (at === cells.length) found.push([cells[0]!, ...values]);
      return;
    }
    const left = pattern.length - values.length;
    if (cells.length - at < left || cells.length - at > 2 * left) return;
    const [piece, next] = [visibleText(cells[at]!), visibleText(cells[at + 1] ?? '')];
    const isCut = pattern[values.length]!;
    const fits = isCut && at + 1 < cells.length && wholeNumber.test(piece) && decimals.test(next);
    if (fits) extend([...values, `${piece}${mark}${next}`], at + 2);
    if (isCut && piece === '' && next === '' && at + 1 < cells.length && surplus === twos)
      extend([...values, ''], at + 2);
    if (!fits || surplus < twos) extend([...values, cells[at]!], at + 1);
  };
  extend([], 1);
  return found.length === 1 ? found[0]! : null;
}
