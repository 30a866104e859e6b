import { monthOf } from '../../time/words.ts';
import { visibleText } from '../../values/clean-text.ts';
import type { SampleRow } from '../table-plan.ts';
import type { PlanHints, Reshaping, Sample } from './reshaping.ts';

const monthName = '\\p{L}{3,9}\\.?';
/** `09-03 00:05`, `3/9 0:05 AM`, `03.09. 00:05`, `Sep  3 00:05:00`, `3-Sep 00:05`, and the same as a date alone. */
const forms: readonly RegExp[] = [
  /^(?<first>\d{1,2})(?<mark>[-/.])(?<second>\d{1,2})(?<end>\.?)(?<clock>[ T,]+\d{1,2}[:.]\d\d.*)?$/u,
  new RegExp(`^(?<month>${monthName})[ -]+(?<day>\\d{1,2}),?(?<clock>[ T,]+\\d{1,2}:\\d\\d.*)?$`, 'u'),
  new RegExp(`^(?<day>\\d{1,2})\\.?[ -]?(?<month>${monthName})(?<clock>[ T,]+\\d{1,2}:\\d\\d.*)?$`, 'u'),
];
const fewestRows = 3;

interface YearlessColumn {
  readonly at: number;
  readonly firstRow: number;
  readonly example: string;
}

/**
 * The first column whose stamps have a day and a month but no year, with their time of day or beside a column of
 * clocks; null for none.
 */
export function stampsWithoutYear({ rows, typeOf }: Sample): YearlessColumn | null {
  for (let at = 0; at < 3; at++) {
    const isYearless = ({ cells }: SampleRow, row: number): boolean => {
      const parts = cells.length > 1 ? partsOf(visibleText(cells[at] ?? '')) : null;
      return parts !== null && (parts.clock !== '' || typeOf(row, at + 1) === 'clock');
    };
    const data = rows.map((row, index) => isYearless(row, index));
    const firstRow = data.indexOf(true);
    const count = data.filter(Boolean).length;
    if (count < fewestRows || count < 0.6 * (rows.length - firstRow)) continue;
    return { at, firstRow, example: visibleText(rows[firstRow]!.cells[at]!) };
  }
  return null;
}

/** Stamps without a year, where the option, a line above the rows or the name of the file has one. */
export function findMissingYear(sample: Sample, hints: PlanHints): Reshaping | null {
  const found = stampsWithoutYear(sample);
  if (found === null) return null;
  const { rows } = sample;
  const { at, firstRow, example } = found;
  const years = yearsAbove(rows, firstRow);
  const inName = yearsIn(hints.fileName);
  const isBackwards = runsBackwards(rows, at);
  const pick = (all: readonly number[]): number => (isBackwards ? Math.max(...all) : Math.min(...all));
  const year = hints.year ?? (years.length > 0 ? pick(years) : inName.length > 0 ? pick(inName) : null);
  if (year === null) return null;
  const headerRow = firstRow - 1;
  if (headerRow < 0) return null;
  return {
    kind: 'missing-year',
    headerRow,
    header: rows[headerRow]!.cells.map(visibleText),
    choice: {
      about: `year of stamps such as ${example}`,
      chosen: String(year),
      because:
        hints.year !== null
          ? 'the option says so'
          : years.length > 0
            ? 'a line above the rows names it'
            : 'the name of the file has it',
      override: hints.year === null ? '--year' : null,
    },
    begin: () => withYear(at, year, isBackwards),
  };
}

function withYear(at: number, firstYear: number, isBackwards: boolean) {
  let year = firstYear;
  let before: readonly [number, number] | null = null;
  return (cells: readonly string[]): readonly (readonly string[])[] => {
    const parts = partsOf(visibleText(cells[at] ?? ''));
    if (parts === null) return [cells];
    const now = parts.numbers;
    if (before !== null) {
      if (!isBackwards && passesNewYear(before, now)) year++;
      if (isBackwards && passesNewYear(now, before)) year--;
    }
    before = now;
    return [cells.with(at, parts.in(year))];
  };
}

/** From the last days of December to the first of January, whichever of the two numbers is the month. */
function passesNewYear(before: readonly [number, number], now: readonly [number, number]): boolean {
  return [0, 1].some(
    (month) => before[month] === 12 && now[month] === 1 && before[1 - month]! > now[1 - month]! + 12,
  );
}

interface Parts {
  /** The two numbers as written, month first where it is a word. */
  readonly numbers: readonly [number, number];
  readonly clock: string;
  in(year: number): string;
}

function partsOf(text: string): Parts | null {
  for (const form of forms) {
    const found = form.exec(text)?.groups;
    if (found === undefined) continue;
    const { first, second, mark, month, day, clock = '' } = found;
    if (first !== undefined && second !== undefined) {
      const numbers = [Number(first), Number(second)] as const;
      if (Math.min(...numbers) < 1 || Math.min(...numbers) > 12 || Math.max(...numbers) > 31) return null;
      if (mark === '.' && found['end'] === '' && clock === '') return null;
      return { numbers, clock, in: (year) => `${first}${mark}${second}${mark}${year}${clock}` };
    }
    const number = monthOf(
      month!
        .toLowerCase()
        .normalize('NFD')
        .replace(/[^a-z]/gu, ''),
    );
    if (number === 0) return null;
    return { numbers: [number, Number(day)], clock, in: (year) => `${day} ${month} ${year}${clock}` };
  }
  return null;
}

function runsBackwards(rows: readonly SampleRow[], at: number): boolean {
  const clocks = rows.flatMap(({ cells }) => {
    const parts = partsOf(visibleText(cells[at] ?? ''));
    return parts === null ? [] : [`${parts.in(2000)} ${visibleText(cells[at + 1] ?? '')}`];
  });
  const times = clocks
    .map((text) => /(\d{1,2}):(\d\d)/u.exec(text))
    .map((found) => (found === null ? Number.NaN : Number(found[1]) * 60 + Number(found[2])));
  let back = 0;
  for (let row = 1; row < times.length; row++) back += Math.sign(times[row - 1]! - times[row]!) || 0;
  return back > 0;
}

function yearsAbove(rows: readonly SampleRow[], firstRow: number): number[] {
  return rows.slice(0, firstRow).flatMap(({ cells }) => yearsIn(cells.join(' ').slice(0, 200)));
}

function yearsIn(text: string): number[] {
  return [
    ...text.matchAll(/(?<!\d)(20\d\d)(?!\d)|(?<!\d)(20\d\d)(?:0[1-9]|1[0-2])(?:[0-2]\d|3[01])(?!\d)/gu),
  ].map((found) => Number(found[1] ?? found[2]));
}
