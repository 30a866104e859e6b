import { header, isoTime, partsOf, plainCell, two, type Writing, written } from './plain-log.ts';
import type { SameLog } from './same-log.ts';

/** More ways to write the times and values of the plain log. */

const as = (name: string, writing: Writing): SameLog => ({ name, content: () => written(writing) });
const time = (name: string, write: (parts: ReturnType<typeof partsOf>, wallMs: number) => string): SameLog =>
  as(name, { time: (wallMs) => write(partsOf(wallMs), wallMs) });
const hour12 = ({ hour, minute }: { hour: number; minute: number }): string =>
  `${hour % 12 === 0 ? 12 : hour % 12}:${two(minute)}:00`;
const half = ({ hour }: { hour: number }, before: string, after: string): string =>
  hour < 12 ? before : after;
const clock = (wallMs: number): string => isoTime(wallMs).slice(11);
/** Denver keeps UTC-6 in September. */
const utcOf = (wallMs: number): number => wallMs + 6 * 3_600_000;

const dayOfYear = (wallMs: number): number => Math.floor((wallMs - Date.UTC(2026, 0, 1)) / 86_400_000) + 1;
const inDigits = (text: string, zero: number): string =>
  text.replace(/\d/gu, (digit) => String.fromCharCode(zero + Number(digit)));

export const moreTimes: readonly SameLog[] = [
  time(
    'a narrow no-break space before PM',
    (p) => `${p.month}/${p.day}/${p.year} ${hour12(p)}\u202f${half(p, 'AM', 'PM')}`,
  ),
  time(
    'the date of a script, with the zone’s name in brackets',
    (p, wallMs) => `Thu Sep ${two(p.day)} 2026 ${clock(wallMs)} GMT-0600 (Mountain Daylight Time)`,
  ),
  time(
    'the stamp of a database with dots in the clock',
    (p) =>
      `${two(p.day)}-SEP-26 ${two(p.hour % 12 === 0 ? 12 : p.hour % 12)}.${two(p.minute)}.00.000000 ${half(p, 'AM', 'PM')}`,
  ),
  time(
    'the same with an offset',
    (p) =>
      `${two(p.day)}-SEP-26 ${two(p.hour % 12 === 0 ? 12 : p.hour % 12)}.${two(p.minute)}.00.000000 ${half(p, 'AM', 'PM')} -06:00`,
  ),
  time('digits with a colon between date and time', (_, wallMs) =>
    isoTime(wallMs).slice(0, 16).replaceAll(/[-:]/gu, '').replace(' ', ':'),
  ),
  time(
    'German with “um” and “Uhr”',
    (p) => `${two(p.day)}.${two(p.month)}.2026 um ${two(p.hour)}:${two(p.minute)} Uhr`,
  ),
  time('Swedish with “kl.”', (_, wallMs) => `${isoTime(wallMs).slice(0, 10)} kl. ${clock(wallMs)}`),
  time('Finnish with “klo”', (p) => `${p.day}.${p.month}.2026 klo ${p.hour}.${two(p.minute)}`),
  time('Polish months', (p, wallMs) => `${p.day} wrz 2026 ${clock(wallMs)}`),
  time('Japanese', (p) => `2026年${p.month}月${p.day}日 ${p.hour}時${two(p.minute)}分`),
  time(
    'Chinese with the half of the day in front',
    (p) => `2026/${p.month}/${p.day} ${half(p, '上午', '下午')} ${hour12(p)}`,
  ),
  time(
    'Korean with the half of the day in front',
    (p) => `2026. ${p.month}. ${p.day}. ${half(p, '오전', '오후')} ${hour12(p)}`,
  ),
  time('a year behind an apostrophe', (p, wallMs) => `${p.month}/${p.day}/'26 ${clock(wallMs)}`),
  time('milliseconds in the date of a program', (_, wallMs) => `/Date(${utcOf(wallMs)})/`),
  time('a literal of a controller', (_, wallMs) => `DT#${isoTime(wallMs).replace(' ', '-')}`),
  time('square brackets', (_, wallMs) => `[${isoTime(wallMs)}]`),
  time('the day of the year', (_, wallMs) => `2026-${dayOfYear(wallMs)}T${clock(wallMs)}`),
  time('week and weekday', (_, wallMs) => `2026-W36-${new Date(wallMs).getUTCDay() || 7}T${clock(wallMs)}`),
  time('Arabic digits', (_, wallMs) => inDigits(isoTime(wallMs), 0x660)),
  time('Devanagari digits', (_, wallMs) => inDigits(isoTime(wallMs), 0x966)),
  time('wide digits and marks', (_, wallMs) =>
    isoTime(wallMs).replace(/[\d:-]/gu, (mark) => String.fromCharCode(mark.charCodeAt(0) + 0xfee0)),
  ),
  time('marks of writing direction', (_, wallMs) => `\u2068\u200f${isoTime(wallMs)}\u2069`),
  as('a date beside a clock that a spreadsheet dates 1899', {
    timeHeader: 'Date,Time',
    time: (wallMs) => `${isoTime(wallMs).slice(0, 10)},1899-12-30 ${clock(wallMs)}`,
  }),
  as('midnights beside a clock of 1899, month first', {
    timeHeader: 'Date,Time',
    time: (wallMs) => {
      const p = partsOf(wallMs);
      return `${p.month}/${p.day}/${p.year} 12:00:00 AM,12/30/1899 ${hour12(p)} ${half(p, 'AM', 'PM')}`;
    },
  }),
  as('midnights beside a clock of a day 0', {
    timeHeader: 'Date,Time',
    time: (wallMs) => `${isoTime(wallMs).slice(0, 10)} 00:00:00,1900-01-00 ${clock(wallMs)}`,
  }),
  as('nanoseconds since 1970', { time: (wallMs) => `${utcOf(wallMs)}000000` }),
];

const number =
  (write: (value: number, column: number) => string): NonNullable<Writing['cell']> =>
  (value, _row, column) =>
    typeof value === 'number' ? write(value, column) : plainCell(value);
const units = ['°F', '°F', '°F', '', '', 'psig', '%'];

export const moreValues: readonly SameLog[] = [
  as('a degree sign alone behind temperatures', {
    cell: number((value, at) => (at < 3 ? `${value}°` : String(value))),
  }),
  as('a star behind numbers in alarm', {
    cell: number((value) => (value > 40 ? `${value}*` : String(value))),
  }),
  as('an H behind numbers in alarm', {
    cell: number((value) => (value > 40 ? `${value} H` : String(value))),
  }),
  as('unit and quality behind every number', { cell: number((value, at) => `${value} ${units[at]} {ok}`) }),
  as('an Arabic decimal mark', { cell: number((value) => String(value).replace('.', '٫')) }),
  as('a raised point', { cell: number((value) => String(value).replace('.', '·')) }),
  as('wide digits', {
    cell: number((value) =>
      String(value).replace(/\d/gu, (digit) => String.fromCharCode(0xff10 + Number(digit))),
    ),
  }),
  as('Persian digits', {
    cell: number((value) => inDigits(String(value), 0x6f0).replace('.', '٫')),
  }),
  as('Devanagari digits', { cell: number((value) => inDigits(String(value), 0x966)) }),
  as('marks of writing direction around every cell', { cell: (value) => `\u2068${plainCell(value)}\u2069` }),
  as('a database’s sign for missing', { cell: (value) => (value === null ? '\\N' : plainCell(value)) }),
  as('states with their number', {
    cell: (value) =>
      ({ ON: 'ON (1)', OFF: 'OFF (0)', OPEN: '1 - Open', CLOSED: '0 - Closed' })[String(value)] ??
      plainCell(value),
  }),
];

/** Stamps that name the beginning and the end of what they stamp. */
export const intervals: readonly SameLog[] = [
  time(
    'two times with a slash',
    (_, wallMs) => `${isoTime(wallMs).replace(' ', 'T')}/${isoTime(wallMs + 300_000).replace(' ', 'T')}`,
  ),
  time('a time and a duration', (_, wallMs) => `${isoTime(wallMs).replace(' ', 'T')}/PT5M`),
  time(
    'two clocks with a dash',
    (_, wallMs) => `${isoTime(wallMs).slice(0, 16)} - ${clock(wallMs + 300_000).slice(0, 5)}`,
  ),
];

/** Headers whose degree sign was lost on the way: the unit is still that of a temperature. */
export const lostDegrees: readonly (readonly string[])[] = ['?', 'Ã‚Â°', '\ufffd'].map((mark) =>
  header.map((name) => name.replace('°', mark)),
);
