import { looksLikeHeader } from '../../header/looks-like-header.ts';
import { dayMs } from '../../time/civil.ts';
import { visibleText } from '../../values/clean-text.ts';
import { timeWords } from '../time-column.ts';
import type { Reshaping, Sample } from './reshaping.ts';

const parts = {
  year: /^(?:year|yr|yyyy|jahr|année|annee|año|ano|anno|jaar|år)$/iu,
  month: /^(?:month|mon|mo|monat|mois|mes|mese|maand|månad)$/iu,
  day: /^(?:day|dd|tag|jour|día|dia|giorno|dag|day of month)$/iu,
  dayOfYear: /^(?:doy|day ?of ?year|julian(?: day)?|jday|yday)$/iu,
  hour: /^(?:hour|hr|hrs|hh|stunde|heure|hora|ora|uur|timme)s?$/iu,
  minute: /^(?:minute|min|mins|mi|minuto)s?$/iu,
  second: /^(?:second|sec|ss|sekunde|seconde|segundo)s?$/iu,
  halfDay: /^(?:am\/?pm|ampm|a\/p|meridiem|half day)?$/iu,
} as const;
type Part = keyof typeof parts;

const fewestRows = 3;

/**
 * Stamps whose parts stand in columns of their own: year, month, day, hour, minute; a date and its hour; a date and
 * the time of day as one number (`1435`, or the fraction of a day); a clock and AM or PM.
 */
export function findSplitStamp(sample: Sample): Reshaping | null {
  const headerRow = sample.rows.findIndex(({ cells }) => looksLikeHeader(cells.map(visibleText)));
  if (headerRow < 0 || headerRow > 60) return null;
  const names = sample.rows[headerRow]!.cells.map(visibleText);
  const data = sample.rows.slice(headerRow + 1).filter(({ cells }) => cells.length >= names.length - 1);
  if (data.length < fewestRows) return null;
  const at: Partial<Record<Part, number>> = {};
  for (const [part, words] of Object.entries(parts) as [Part, RegExp][]) {
    const found = names.findIndex((name) => name !== '' && words.test(name));
    if (found >= 0) at[part] = found;
  }
  const written = stampOf(sample, headerRow, names, at);
  if (written === null) return null;
  const most = data.filter(({ cells }) => written.stamp(cells) !== null).length;
  if (most < 0.6 * data.length || most < fewestRows) return null;
  const rest = names.map((_, column) => column).filter((column) => !written.columns.includes(column));
  const reshape = (cells: readonly string[]): string[] => [
    written.stamp(cells) ?? '',
    ...rest.map((column) => cells[column] ?? ''),
    ...cells.slice(names.length),
  ];
  return {
    kind: 'split-stamp',
    headerRow,
    header: ['Time', ...rest.map((column) => names[column]!)],
    choice: {
      about: 'time of a row',
      chosen: `from the columns ${written.columns.map((column) => `“${names[column]}”`).join(', ')}`,
      because: 'each holds a part of it',
      override: null,
    },
    begin: () => (cells) => [
      cells.every((cell) => visibleText(cell) === '') || cells.length < 2 ? cells : reshape(cells),
    ],
  };
}

interface WrittenStamp {
  readonly columns: readonly number[];
  /** The stamp of a row in one text; null where a part is missing or none. */
  stamp(cells: readonly string[]): string | null;
}

const two = (value: number): string => String(value).padStart(2, '0');

function whole(text: string | undefined, from: number, to: number): number | null {
  const shown = visibleText(text ?? '');
  if (!/^\d{1,4}(?:\.0+)?$/u.test(shown)) return null;
  const value = Number(shown);
  return value >= from && value <= to ? value : null;
}

function stampOf(
  sample: Sample,
  headerRow: number,
  names: readonly string[],
  at: Partial<Record<Part, number>>,
): WrittenStamp | null {
  const { year, month, day, dayOfYear } = at;
  if (year !== undefined && month !== undefined && day !== undefined) {
    const clock = clockOf(sample, headerRow, names, at, [year, month, day]);
    return clock === null
      ? null
      : joined([year, month, day], clock, (cells) => {
          const [y, m, d] = [
            whole(cells[year], 1990, 2100),
            whole(cells[month], 1, 12),
            whole(cells[day], 1, 31),
          ];
          return y === null || m === null || d === null ? null : `${y}-${two(m)}-${two(d)}`;
        });
  }
  if (year !== undefined && dayOfYear !== undefined) {
    const clock = clockOf(sample, headerRow, names, at, [year, dayOfYear]);
    return clock === null
      ? null
      : joined([year, dayOfYear], clock, (cells) => {
          const [y, d] = [whole(cells[year], 1990, 2100), whole(cells[dayOfYear], 1, 366)];
          return y === null || d === null ? null : new Date(Date.UTC(y, 0, d)).toISOString().slice(0, 10);
        });
  }
  const date = dateColumn(sample, headerRow, names);
  if (date === null) return null;
  const clock = clockOf(sample, headerRow, names, at, [date]);
  return clock === null || clock.columns.length === 0
    ? null
    : joined([date], clock, (cells) => dateText(visibleText(cells[date] ?? '')));
}

/** A date as written; the day that a spreadsheet counts from 1899-12-30 as a date. */
function dateText(written: string): string | null {
  if (!/^[3-7]\d{4}$/u.test(written)) return written === '' ? null : written;
  return new Date((Number(written) - 25_569) * dayMs).toISOString().slice(0, 10);
}

function joined(
  dateColumns: readonly number[],
  clock: WrittenStamp,
  date: (cells: readonly string[]) => string | null,
): WrittenStamp {
  return {
    columns: [...dateColumns, ...clock.columns],
    stamp: (cells) => {
      const [day, time] = [date(cells), clock.stamp(cells)];
      return day === null || time === null ? null : `${day} ${time}`;
    },
  };
}

/** Share of the rows below the header whose cell in `column` is of a type. */
function shareOf({ rows, typeOf }: Sample, headerRow: number, column: number, type: string): number {
  let met = 0;
  let filled = 0;
  for (let row = headerRow + 1; row < rows.length; row++) {
    const found = typeOf(row, column);
    if (found === 'empty') continue;
    filled++;
    if (found === type) met++;
  }
  return filled === 0 ? 0 : met / filled;
}

function dateColumn(sample: Sample, headerRow: number, names: readonly string[]): number | null {
  const found = names.findIndex(
    (name, column) =>
      column < 24 &&
      (timeWords.test(name) || name === '') &&
      (shareOf(sample, headerRow, column, 'date') > 0.8 ||
        (/date|datum|fecha|dato/iu.test(name) &&
          shareOfText(sample.rows.slice(headerRow + 1), column, /^[3-7]\d{4}$/u) > 0.8)),
  );
  return found < 0 ? null : found;
}

/** The time of day of a row: hour and minute columns, one number, or a clock beside AM and PM. */
function clockOf(
  sample: Sample,
  headerRow: number,
  names: readonly string[],
  at: Partial<Record<Part, number>>,
  taken: readonly number[],
): WrittenStamp | null {
  const { hour, minute, second } = at;
  if (hour !== undefined) {
    const columns = [hour, minute, second].filter((column) => column !== undefined);
    return {
      columns,
      stamp: (cells) => {
        const [h, m, s] = [
          whole(cells[hour], 0, 24),
          minute === undefined ? 0 : whole(cells[minute], 0, 59),
          second === undefined ? 0 : whole(cells[second], 0, 59),
        ];
        return h === null || m === null || s === null ? null : `${two(h)}:${two(m)}:${two(s)}`;
      },
    };
  }
  const data = sample.rows.slice(headerRow + 1);
  const halfDay = names.findIndex(
    (name, column) =>
      parts.halfDay.test(name) && data.length > 0 && shareOfText(data, column, /^[ap]\.?\s?m\.?$/iu) > 0.8,
  );
  const clock = names.findIndex(
    (_, column) => column < 24 && shareOf(sample, headerRow, column, 'clock') > 0.8,
  );
  if (halfDay >= 0 && clock >= 0) {
    return {
      columns: [clock, halfDay],
      stamp: (cells) => `${visibleText(cells[clock] ?? '')} ${visibleText(cells[halfDay] ?? '')}`,
    };
  }
  const number = names.findIndex(
    (name, column) =>
      !taken.includes(column) &&
      (timeWords.test(name) || /^hh ?mm(?: ?ss)?$/iu.test(name)) &&
      shareOfText(data, column, /^(?:\d{1,4}|\d{5,6}|0?\.\d+)$/u) > 0.8,
  );
  return number < 0
    ? null
    : { columns: [number], stamp: (cells) => clockOfNumber(visibleText(cells[number] ?? '')) };
}

function shareOfText(
  rows: readonly { readonly cells: readonly string[] }[],
  column: number,
  form: RegExp,
): number {
  return rows.filter(({ cells }) => form.test(visibleText(cells[column] ?? ''))).length / rows.length;
}

/** `1435`, `143500`, or the fraction of a day that a spreadsheet keeps. */
function clockOfNumber(text: string): string | null {
  if (/^0?\.\d+$|^0$/u.test(text)) {
    const seconds = Math.round(Number(text) * 86_400);
    return `${two(Math.floor(seconds / 3600))}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`;
  }
  if (!/^\d{1,6}$/u.test(text)) return null;
  const digits = text.padStart(text.length > 4 ? 6 : 4, '0');
  const [hour, minute, second] = [digits.slice(0, 2), digits.slice(2, 4), digits.slice(4)];
  if (Number(hour) > 24 || Number(minute) > 59 || Number(second) > 59) return null;
  return `${hour}:${minute}:${second === '' ? '00' : second}`;
}
