import { dayMs, dayNumber } from '../../time/civil.ts';
import { TimeReader } from '../../time/time-reader.ts';
import { visibleText } from '../../values/clean-text.ts';
import { readTimeText } from '../cell-types.ts';
import type { SampleRow } from '../table-plan.ts';
import { countsFromAStart } from './counted-times.ts';
import type { Reshaping, Sample } from './reshaping.ts';

/** Clocks put back in autumn run through an hour again within the day. */
const mostBackMs = 3_600_000;
const fewestRows = 3;
const mostTitleCells = 4;
interface Title {
  readonly text: string;
  /** Day as ms where the writing itself fixes it; NaN where the order of day and month decides. */
  readonly fixedMs: number;
}

/**
 * Rows that carry a time of day alone, under a line that names the date: one over each day, or one over the whole
 * table, whose rows pass midnight. Where no line does, the name of the file may.
 */
export function findDateTitles({ rows, typeOf }: Sample, fileName: string): Reshaping | null {
  const widest = rows.reduce((most, { cells }) => Math.max(most, cells.length), 0);
  for (let column = 0; column < Math.min(widest, 4); column++) {
    const isData = (row: number): boolean => rows[row]!.cells.length > 1 && typeOf(row, column) === 'clock';
    const data = rows.map((_, row) => row).filter(isData);
    if (data.length < fewestRows) continue;
    const first = data[0]!;
    const titles = rows.map(({ cells }, row) => (isData(row) ? null : titleOf(cells)));
    const written = titles.slice(0, first).findLast((title) => title !== null) ?? null;
    const above = written ?? dateIn(fileName);
    if (above === null) return null;
    const headerRow = headerAbove(rows, first);
    if (headerRow < 0) return null;
    const names = rows[headerRow]!.cells.map(visibleText);
    if (countsFromAStart.test(names[column] ?? '')) return null;
    const isHeader = (cells: readonly string[]): boolean =>
      cells.length === names.length && cells.every((cell, at) => visibleText(cell) === names[at]);
    return {
      kind: 'date-titles',
      headerRow,
      header: names,
      choice: {
        about: 'date of the rows',
        chosen: `that ${written === null ? 'in the name of the file' : 'of the line above them'}, and the next day where the clock passes midnight`,
        because: 'the rows carry a time of day alone',
        override: null,
      },
      begin: () => dated(column, above, isHeader),
    };
  }
  return null;
}

function dated(column: number, above: Title, isHeader: (cells: readonly string[]) => boolean) {
  const reader = new TimeReader(null);
  let date: Title | null = above;
  let latestMs = Number.NEGATIVE_INFINITY;
  return (cells: readonly string[]): readonly (readonly string[])[] => {
    const clock = visibleText(cells[column] ?? '');
    const clockMs = cells.length < 2 ? Number.NaN : readTimeText(reader, clock);
    if (Number.isNaN(clockMs) || reader.kind !== 'time') {
      if (isHeader(cells)) return [];
      const title = titleOf(cells);
      if (title === null) return [cells];
      [date, latestMs] = [title, Number.NEGATIVE_INFINITY];
      return [];
    }
    if (clockMs < latestMs - mostBackMs) {
      date = date === null ? null : nextDay(date);
      latestMs = clockMs;
    }
    latestMs = Math.max(latestMs, clockMs);
    return [cells.with(column, date === null ? '' : `${date.text} ${clock}`)];
  };
}

/** The date in the name of a file with the year first: `2026-09-03.csv`, `LOG20260903.TXT`. */
function dateIn(fileName: string): Title | null {
  const [, year, month, day] = /(?<!\d)(20\d\d)[-_.]?(\d\d)[-_.]?(\d\d)(?!\d)/u.exec(fileName) ?? [];
  const days = dayNumber(Number(year), Number(month), Number(day));
  return Number.isNaN(days) ? null : { text: `${year}-${month}-${day}`, fixedMs: days * dayMs };
}

function nextDay({ fixedMs }: Title): Title | null {
  if (Number.isNaN(fixedMs)) return null;
  const next = fixedMs + dayMs;
  return { text: new Date(next).toISOString().slice(0, 10), fixedMs: next };
}

/** The date that a line of few cells names, alone or behind a word; null where it names none, or another's. */
function titleOf(cells: readonly string[]): Title | null {
  const filled = cells.map(visibleText).filter((cell) => cell !== '');
  if (filled.length === 0 || filled.length > mostTitleCells) return null;
  const line = filled.join(' ');
  if (line.length > 60 || !/\d/u.test(line)) return null;
  const [, label = '', rest = line] = /^([^\d:]{1,30}):\s*(.*)$/u.exec(line) ?? [];
  if (/\b(?:to|until|end|last|print|export|creat|generat|report)/iu.test(label)) return null;
  const reader = new TimeReader(null);
  for (const text of [rest, rest.replace(/^\p{L}+,?\s/u, '')]) {
    const ms = readTimeText(reader, text);
    if (Number.isNaN(ms) || reader.kind === 'time') continue;
    if (reader.kind === 'date-time' && !/start|begin|first|from/iu.test(label)) return null;
    const fixedMs = reader.dateIsOpen ? Number.NaN : Math.floor(ms / dayMs) * dayMs;
    const date = Number.isNaN(fixedMs) ? text : new Date(fixedMs).toISOString().slice(0, 10);
    return reader.kind === 'date' || !Number.isNaN(fixedMs) ? { text: date, fixedMs } : null;
  }
  return null;
}

/** The nearest row of names above the first reading. */
function headerAbove(rows: readonly SampleRow[], first: number): number {
  for (let row = first - 1; row >= Math.max(0, first - 6); row--) {
    const shown = rows[row]!.cells.map(visibleText);
    if (
      shown.length === rows[first]!.cells.length &&
      shown.filter((cell) => /\p{L}/u.test(cell)).length * 2 > shown.length
    )
      return row;
  }
  return -1;
}
