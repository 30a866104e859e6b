import { looksLikeHeader } from '../../header/looks-like-header.ts';
import { visibleText } from '../../values/clean-text.ts';
import type { Reshaping, Sample } from './reshaping.ts';

const fewestRows = 3;
const mostRows = 300;

/** Rows whose cells nothing but blanks part: as many words in every row, or cells at the same places of every line. */
export function findFixedWidth({ rows }: Sample): Reshaping | null {
  const alone = rows.filter(({ cells }) => cells.length === 1).length;
  if (alone < fewestRows + 1 || alone < 0.8 * rows.length) return null;
  const lines = rows.slice(0, mostRows).map(({ cells }) => (cells.length === 1 ? cells[0]! : ''));
  const headerRow = lines.findIndex((line) => isHeader(line));
  if (headerRow < 0) return null;
  const data = lines.slice(headerRow + 1).filter((line) => /^\s*\S*\d/u.test(line) && !isRule(line));
  if (data.length < fewestRows) return null;
  const byWords = splitAtBlanks(lines[headerRow]!, data);
  const byPlace = byWords === null ? splitAtPlaces(lines[headerRow]!, data) : null;
  const found = byWords ?? byPlace;
  if (found === null || found.header.length < 2) return null;
  return {
    kind: 'fixed-width',
    headerRow,
    header: found.header,
    choice: {
      about: 'cells of a row',
      chosen: byWords === null ? 'by their place in the line' : 'parted by blanks',
      because: 'no other mark stands between them, and every row fits',
      override: '--delimiter',
    },
    begin: () => (cells) => {
      const line = cells.length === 1 ? cells[0]! : '';
      if (isRule(line)) return [];
      return [(line === '' ? null : found.cellsOf(line)) ?? cells];
    },
  };
}

interface Split {
  readonly header: readonly string[];
  cellsOf(line: string): readonly string[] | null;
}

function isRule(line: string): boolean {
  return /^[-=_+\s]*$/u.test(line) && /[-=_]/u.test(line);
}

function isHeader(line: string): boolean {
  const apart = line.trim().split(/ {2,}/u);
  const cells = apart.length > 1 ? apart : wordsOf(line);
  return cells.length > 1 && looksLikeHeader(cells) && !/^\s*\d/u.test(line);
}

function wordsOf(line: string): string[] {
  return visibleText(line).split(/ +/u);
}

/** As many words in every row as in the header, or one more where the time is two. */
function splitAtBlanks(headerLine: string, data: readonly string[]): Split | null {
  const names = wordsOf(headerLine);
  const count = wordsOf(data[0]!).length;
  if (data.some((line) => wordsOf(line).length !== count)) return null;
  if (names.length !== count && names.length + 1 !== count) return null;
  return {
    header: names.length === count ? names : [names[0]!, '', ...names.slice(1)],
    cellsOf: (line) => {
      const words = wordsOf(line);
      return words.length === count ? words : null;
    },
  };
}

interface Column {
  readonly from: number;
  readonly to: number;
}

/** Cells between the places that are blank in every row. */
function splitAtPlaces(headerLine: string, data: readonly string[]): Split | null {
  const columns = columnsOf(data);
  if (columns.length < 2) return null;
  const startsAlike = columns.map(({ from, to }) =>
    data.every((line) => line[from] !== ' ' || line.slice(from, to).trim() === ''),
  );
  const cuts = columns.slice(1).map(({ from }, at) => {
    const before = columns[at]!.to;
    if (startsAlike[at + 1] === true) return from;
    return startsAlike[at] === true ? Math.ceil((before + from) / 2) : before;
  });
  const header = namesAt(headerLine, columns, startsAlike);
  if (header === null) return null;
  return {
    header,
    cellsOf: (line) => {
      if (cuts.some((cut) => isMark(line[cut - 1]) && isMark(line[cut]))) return null;
      return columns.map((_, at) => line.slice(at === 0 ? 0 : cuts[at - 1], cuts[at]).trim());
    },
  };
}

function isMark(character: string | undefined): boolean {
  return character !== undefined && character.trim() !== '';
}

function columnsOf(data: readonly string[]): Column[] {
  const width = data.reduce((most, line) => Math.max(most, line.length), 0);
  const columns: Column[] = [];
  let from = -1;
  for (let at = 0; at <= width; at++) {
    const isBlank = at === width || data.every((line) => !isMark(line[at]));
    if (!isBlank && from < 0) from = at;
    if (!isBlank || from < 0) continue;
    columns.push({ from, to: at });
    from = -1;
  }
  return columns;
}

/** The words of the header, each at the column that it stands over; null where one stands over none. */
function namesAt(
  headerLine: string,
  columns: readonly Column[],
  startsAlike: readonly boolean[],
): string[] | null {
  const names = columns.map((): string[] => []);
  const isLeft = startsAlike.filter(Boolean).length * 2 > columns.length;
  for (const { 0: word, index } of headerLine.matchAll(/\S+/gu)) {
    const column = isLeft
      ? columns.findLastIndex(({ from }) => from <= index)
      : columns.findIndex(({ to }) => to >= index + word.length);
    if (column < 0) return null;
    names[column]!.push(word);
  }
  return names.map((words) => words.join(' '));
}
