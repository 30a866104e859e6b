import { plainDigits } from '../values/plain-digits.ts';
import { civilDate, dayNumber } from './civil.ts';

export interface PlainStamp {
  readonly text: string;
  /** True where the cell names two times, of which the first is meant. */
  readonly isInterval: boolean;
}

const longest = 80;

/** A stamp as programs, languages and standards write it, in the letters and marks that every stamp has. */
export function plainStamp(written: string): PlainStamp {
  if (written.length > longest) return { text: written, isInterval: false };
  const text = folded(withoutEmptyDate(coded(bracketed(written))));
  const start = intervalStart(text);
  return { text: start ?? text, isInterval: start !== null };
}

/** `[2026-09-03 00:05]`; the zone's name in brackets behind a stamp (`GMT-0600 (…)`); a mail's `>`; a two-digit year's `'`. */
function bracketed(text: string): string {
  let inner = text;
  if (/^(?:\[.*\]|<.*>|\{.*\})$/u.test(inner)) inner = inner.slice(1, -1).trim();
  if (inner.endsWith(')') && !inner.includes('Date(')) {
    const opening = inner.lastIndexOf('(');
    inner = opening === 0 ? inner.slice(1, -1).trim() : inner.slice(0, opening).trimEnd();
  }
  if (inner.startsWith('>')) inner = inner.replace(/^[> ]+/u, '');
  return inner.includes("'") ? inner.replace(/'(?=\d\d\b)/u, '') : inner;
}

const programDate = /^\\?\/Date\((-?\d{10,14})(?:[-+]\d{4})?\)\\?\/$/u;
/** Literals of IEC 61131-3: `DT#2026-09-03-00:05:00`, `D#2026-09-03`, `TOD#00:05:00`. */
const controllerLiteral =
  /^(?:L?DT|DATE_AND_TIME|L?D|DATE|L?TOD|TIME_OF_DAY)#(?=\d)|^D(?=\d{4}-\d\d-\d\d\b)/iu;
const weekDate = /^(\d{4})-?W(\d\d)-?([1-7])(?=$|[T ])/u;

/** Dates that are coded: milliseconds since 1970 in JSON, literals of a controller, weeks of ISO 8601. */
function coded(text: string): string {
  const counted = programDate.exec(text);
  if (counted !== null) {
    const ms = Number(counted[1]);
    return Math.abs(ms) < 8e15 ? new Date(ms).toISOString() : text;
  }
  const plain = text.replace(controllerLiteral, '');
  const week = weekDate.exec(plain);
  if (week === null) return plain;
  const [head, year, number, weekday] = week;
  const fourth = dayNumber(Number(year), 1, 4);
  // 4 January is always in week 1, and 1970-01-01 was a Thursday.
  const monday = fourth - ((((fourth + 3) % 7) + 7) % 7);
  const date = civilDate(monday + 7 * (Number(number) - 1) + Number(weekday) - 1);
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${date.year}-${two(date.month)}-${two(date.day)}${plain.slice(head.length)}`;
}

/** The day 0 or 1 that spreadsheets and databases put before a time of day that has no date. */
const emptyDate =
  /^(?:1899-12-3[01]|1900-01-0[01]|12\/3[01]\/1899|3[01][./]12[./]1899|0?1\/0?[01]\/1900|0?[01][./]0?1[./]1900)[T ,]+(?=\d)/u;

function withoutEmptyDate(text: string): string {
  return text.includes('1899') || text.includes('1900') ? text.replace(emptyDate, '') : text;
}

/** Stamps as they are written outside the letters a to z: accents (août), Chinese, Japanese and Korean marks. */
const eastAsianMarks: readonly (readonly [RegExp, string])[] = [
  [/[年月]/gu, '-'],
  [/日/gu, ' '],
  [/[時时点]/gu, ':'],
  [/分(?=\d)/gu, ':'],
  [/[分秒]/gu, ''],
  [/上午|午前|오전/gu, ' AM '],
  [/下午|午後|오후/gu, ' PM '],
];

function folded(text: string): string {
  let plain = text;
  if (/[ap]m/iu.test(plain)) plain = plain.replace(/(\d\d)\.(\d\d)\.(\d\d)(?=[. ])/u, '$1:$2:$3');
  if (/^[ -~]*$/u.test(plain)) return plain;
  plain = plainDigits(plain).replace(/[\u2010-\u2015\u2212]/gu, '-');
  for (const [mark, each] of eastAsianMarks) plain = plain.replace(mark, each);
  return plain
    .normalize('NFKD')
    .replace(/[\u0300-\u036f]/gu, '')
    .replace(/[-:\s]+$/u, '');
}

/** `2026-09-03T00:00/2026-09-03T00:05` and `…/PT5M` (ISO 8601); `2026-09-03 00:00 - 00:05`. */
const intervals = [
  /^(\d[^/]*\d:\d\d[^/]*)\/(?:\d[^/]*\d:\d\d|P\w)/u,
  /^(.*\d:\d\d(?::\d\d)?(?:\s?[ap]\.?m\.?)?)\s(?:-|to|bis|until)\s\d[^-]*\d:\d\d/iu,
];

/** The first of the two times that a cell names, or null. */
function intervalStart(text: string): string | null {
  for (const form of intervals) {
    const found = form.exec(text)?.[1];
    if (found !== undefined) return found;
  }
  return null;
}
