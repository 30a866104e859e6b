import { header, isoTime, partsOf, plainCell, plainRows, two, type Writing, written } from './plain-log.ts';

/** The plain log in another dialect: each must come out byte for byte as the plain one. */
export interface SameLog {
  readonly name: string;
  readonly content: () => string | Uint8Array;
}

const as = (name: string, writing: Writing): SameLog => ({ name, content: () => written(writing) });
const encodedAs = (name: string, encode: (text: string) => Uint8Array, writing: Writing = {}): SameLog => ({
  name,
  content: () => encode(written(writing)),
});

export const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

export function joined(...parts: readonly Uint8Array[]): Uint8Array {
  return Uint8Array.from(parts.flatMap((part) => [...part]));
}

export function utf16(text: string, littleEndian: boolean): Uint8Array {
  const bytes = new Uint8Array(text.length * 2);
  const view = new DataView(bytes.buffer);
  for (let at = 0; at < text.length; at++) view.setUint16(at * 2, text.charCodeAt(at), littleEndian);
  return bytes;
}

/** One byte a character; `degree` is what the code page has for the degree sign. */
export function oneByte(text: string, degree: number): Uint8Array {
  return Uint8Array.from(text, (mark) => (mark === '°' ? degree : mark.charCodeAt(0)));
}

const comma = (value: number | string | null): string => plainCell(value).replace('.', ',');
const quotedCell = (quote: string) => (value: number | string | null) =>
  `${quote}${plainCell(value)}${quote}`;
const inQuotes = (lines: string[]): string[] =>
  lines.map((line) =>
    line
      .split(',')
      .map((cell) => `"${cell}"`)
      .join(','),
  );

export const encodings: readonly SameLog[] = [
  encodedAs('UTF-8 with a mark', (text) => joined(Uint8Array.of(0xef, 0xbb, 0xbf), utf8(text))),
  encodedAs('UTF-16, low byte first, with a mark', (text) => utf16(`\ufeff${text}`, true)),
  encodedAs('UTF-16, high byte first, with a mark', (text) => utf16(`\ufeff${text}`, false)),
  encodedAs('UTF-16, low byte first, without a mark', (text) => utf16(text, true)),
  encodedAs('UTF-16, high byte first, without a mark', (text) => utf16(text, false)),
  encodedAs('Windows-1252', (text) => oneByte(text, 0xb0)),
  encodedAs('DOS code page 437', (text) => oneByte(text, 0xf8)),
  encodedAs('Macintosh', (text) => oneByte(text, 0xa1)),
  as('a byte order mark in the middle', {
    changeLines: (lines) => lines.map((line, at) => (at === 300 ? `\ufeff${line}` : line)),
  }),
  as('a byte order mark inside a cell', {
    changeLines: (lines) => lines.map((line, at) => (at === 301 ? line.replace(',', ',\ufeff') : line)),
  }),
  as('NUL bytes in cells', {
    changeLines: (lines) => lines.map((line, at) => (at % 50 === 7 ? line.replace(',', '\0,') : line)),
  }),
  encodedAs('UTF-8 taken for Windows-1252 and encoded again', (text) => utf8(text.replaceAll('°', 'Â°'))),
  as('an end mark of DOS', { after: ['\x1a'] }),
  as('form feeds between pages', {
    changeLines: (lines) => lines.map((line, at) => (at % 60 === 59 ? `\f${line}` : line)),
  }),
  as('NUL bytes after the end', { after: ['\0\0\0\0'] }),
  as('zero-width marks in the header', { headers: header.map((name) => `\u200b${name}\u200b`) }),
  as('a no-break space for a blank in the header', {
    headers: header.map((name) => name.replaceAll(' ', '\u00a0')),
  }),
  as('no-break spaces around values', { cell: (value) => `\u00a0${plainCell(value)}\u00a0` }),
];

export const dialects: readonly SameLog[] = [
  as('semicolons', { delimiter: ';' }),
  as('tabs', { delimiter: '\t' }),
  as('pipes', { delimiter: '|' }),
  as('semicolons and decimal commas', { delimiter: ';', cell: comma }),
  as('tabs and decimal commas', { delimiter: '\t', cell: comma }),
  {
    name: 'commas and decimal commas in quotes',
    content: () =>
      written({
        cell: (value) =>
          typeof value === 'number' && !Number.isInteger(value) ? `"${comma(value)}"` : plainCell(value),
      }),
  },
  as('a first line that names the delimiter', { delimiter: ';', before: ['sep=;'] }),
  as('CRLF line ends', { lineEnd: '\r\n' }),
  as('CR line ends', { lineEnd: '\r' }),
  as('mixed line ends', { lineEnd: (line) => ['\n', '\r\n', '\r'][line % 3]! }),
  as('CR CR LF line ends of a mail gateway', { lineEnd: '\r\r\n' }),
  { name: 'no final line end', content: () => written().trimEnd() },
  as('blank lines between rows', {
    changeLines: (lines) => lines.flatMap((line, at) => (at % 9 === 4 ? ['', line] : [line])),
  }),
  as('lines of blanks', {
    changeLines: (lines) => lines.flatMap((line, at) => (at % 9 === 4 ? ['   ', line] : [line])),
  }),
  as('lines of only delimiters', {
    changeLines: (lines) => lines.flatMap((line, at) => (at % 9 === 4 ? [',,,,,,,', line] : [line])),
  }),
  as('double quotes around every cell', { changeLines: inQuotes }),
  as('double quotes around text only', {
    cell: (value) => (typeof value === 'string' ? `"${value}"` : plainCell(value)),
  }),
  as('single quotes around times', { time: (wallMs) => `'${isoTime(wallMs)}'` }),
  as('single quotes around every cell', {
    changeLines: (lines) =>
      lines.map((line) =>
        line
          .split(',')
          .map((cell) => `'${cell}'`)
          .join(','),
      ),
  }),
  as('spaces after commas', { delimiter: ', ' }),
  as('spaces after commas before quotes', { delimiter: ', ', cell: quotedCell('"') }),
  as('padded cells', { cell: (value) => plainCell(value).padStart(9).padEnd(12) }),
  as('a trailing delimiter on every line', { changeLines: (lines) => lines.map((line) => `${line},`) }),
  as('a trailing delimiter on the rows only', {
    changeLines: (lines) => lines.map((line, at) => (at === 0 ? line : `${line},`)),
  }),
  as('empty cells at the end left away', {
    headers: [...header, 'Spare'],
    changeLines: (lines) => lines.map((line, at) => (at === 0 ? line : line)),
  }),
  as('text kept as text by a spreadsheet', { cell: (value) => (value === null ? '' : `="${value}"`) }),
];

const timeLast = (lines: string[]): string[] =>
  lines.map((line) => {
    const [time, ...rest] = line.split(',');
    return [...rest, time].join(',');
  });

export const headers: readonly SameLog[] = [
  as('the time in the last column', { changeLines: timeLast }),
  as('a spacer column without name and values', {
    headers: ['', ...header],
    time: (wallMs) => `${isoTime(wallMs)},`,
  }),
  as('remarks that begin with a hash', { before: ['# exported by hand', '# rack A, all circuits'] }),
  {
    name: 'a name with a line break inside',
    content: () => written({ headers: header.map((name) => `"${name.replace(' ', '\n')}"`) }),
  },
  as('the whole file twice, one after the other', { changeLines: (lines) => [...lines, ...lines] }),
  as('a preamble of four lines', {
    before: ['Larkspur Street Market', 'Rack A history', 'Exported,2026-09-06 08:00', ''],
  }),
  as('a preamble of 500 lines', {
    before: Array.from({ length: 500 }, (_, at) => `Remark ${at}: nothing here`),
  }),
  as('a preamble with its own cells', {
    before: ['Site:,Larkspur Street Market', 'From:,2026-09-03 00:00', 'To:,2026-09-05 23:55', ''],
  }),
  as('a preamble padded with delimiters', {
    before: ['Larkspur Street Market,,,,,,,', ',,,,,,,', 'Rack A history,,,,,,,'],
  }),
  as('a units row', { changeLines: ([first, ...rest]) => [first!, ',°F,°F,°F,,,psig,%', ...rest] }),
  as('a units row with words for none', {
    changeLines: ([first, ...rest]) => [first!, 'yyyy-mm-dd hh:mm:ss,°F,°F,°F,-,-,psig,%', ...rest],
  }),
  as('a row of kinds below the header', {
    changeLines: ([first, ...rest]) => [
      first!,
      'Timestamp,Analog,Analog,Analog,Digital,Digital,Analog,Analog',
      ...rest,
    ],
  }),
  as('a ruled line below the header', {
    changeLines: ([first, ...rest]) => [first!, Array(8).fill('-----').join(','), ...rest],
  }),
  as('a blank line below the header', { changeLines: ([first, ...rest]) => [first!, '', ...rest] }),
  as('the header repeated every hundred rows', {
    changeLines: (lines) =>
      lines.flatMap((line, at) => (at > 0 && at % 100 === 0 ? [lines[0]!, line] : [line])),
  }),
  as('header and units row repeated', {
    changeLines: ([first, ...rest]) => {
      const units = ',°F,°F,°F,,,psig,%';
      return [
        first!,
        units,
        ...rest.flatMap((line, at) => (at % 150 === 149 ? [first!, units, line] : [line])),
      ];
    },
  }),
  as('a page title and the header repeated', {
    changeLines: (lines) =>
      lines.flatMap((line, at) => (at > 0 && at % 200 === 0 ? ['', 'Page 2', lines[0]!, line] : [line])),
  }),
  as('the header repeated twice at the top', { changeLines: (lines) => [lines[0]!, ...lines] }),
  as('a footer with a total', { after: ['Average,36.2,37.0,36,,,46.5,38'] }),
  as('a footer of text', { after: ['', 'End of report', '864 rows exported'] }),
  as('a column that counts the rows', {
    timeHeader: '#,Time',
    time: (wallMs) => `${(wallMs - Date.UTC(2026, 8, 3)) / 300_000},${isoTime(wallMs)}`,
  }),
];

const month = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const clock = (wallMs: number): string => isoTime(wallMs).slice(11);
const twelve = (wallMs: number, mark: (afternoon: boolean) => string): string => {
  const { hour, minute, second } = partsOf(wallMs);
  return `${hour % 12 === 0 ? 12 : hour % 12}:${two(minute)}:${two(second)}${mark(hour >= 12)}`;
};
const dated =
  (write: (parts: ReturnType<typeof partsOf>) => string) =>
  (wallMs: number): string =>
    write(partsOf(wallMs));
/** Denver keeps UTC-6 in September. */
const utcOf = (wallMs: number): number => wallMs + 6 * 3_600_000;

export const times: readonly SameLog[] = [
  as('ISO with T', { time: (wallMs) => isoTime(wallMs).replace(' ', 'T') }),
  as('ISO to the minute', { time: (wallMs) => isoTime(wallMs).slice(0, 16) }),
  as('ISO with milliseconds', { time: (wallMs) => `${isoTime(wallMs)}.000` }),
  as('ISO in UTC with Z', { time: (wallMs) => new Date(utcOf(wallMs)).toISOString() }),
  as('ISO with an offset', { time: (wallMs) => `${isoTime(wallMs).replace(' ', 'T')}-06:00` }),
  as('ISO with an offset without a colon', { time: (wallMs) => `${isoTime(wallMs).replace(' ', 'T')}-0600` }),
  as('ISO with the offset of another zone', {
    time: (wallMs) => `${isoTime(utcOf(wallMs) + 7_200_000).replace(' ', 'T')}+02:00`,
  }),
  as('a zone word', { time: (wallMs) => `${isoTime(wallMs)} MDT` }),
  as('ISO with slashes', { time: (wallMs) => isoTime(wallMs).replaceAll('-', '/') }),
  as('compact ISO', { time: (wallMs) => isoTime(wallMs).replace(' ', 'T').replaceAll(/[-:]/gu, '') }),
  as('fourteen digits', { time: (wallMs) => isoTime(wallMs).replaceAll(/[-: ]/gu, '') }),
  as('month first', {
    time: (wallMs) => `${dated((p) => `${two(p.month)}/${two(p.day)}/${p.year}`)(wallMs)} ${clock(wallMs)}`,
  }),
  as('month first without leading zeros', {
    time: (wallMs) => `${dated((p) => `${p.month}/${p.day}/${p.year} ${p.hour}:${two(p.minute)}`)(wallMs)}`,
  }),
  as('month first with AM and PM', {
    time: (wallMs) =>
      `${dated((p) => `${p.month}/${p.day}/${p.year}`)(wallMs)} ${twelve(wallMs, (pm) => (pm ? ' PM' : ' AM'))}`,
  }),
  as('AM and PM glued on in lower case', {
    time: (wallMs) =>
      `${dated((p) => `${p.month}/${p.day}/${p.year}`)(wallMs)} ${twelve(wallMs, (pm) => (pm ? 'pm' : 'am'))}`,
  }),
  as('a.m. and p.m.', {
    time: (wallMs) =>
      `${dated((p) => `${p.month}/${p.day}/${p.year}`)(wallMs)} ${twelve(wallMs, (pm) => (pm ? ' p.m.' : ' a.m.'))}`,
  }),
  as('day first', {
    time: (wallMs) => `${dated((p) => `${two(p.day)}/${two(p.month)}/${p.year}`)(wallMs)} ${clock(wallMs)}`,
  }),
  as('day first with dashes', {
    time: (wallMs) => `${dated((p) => `${two(p.day)}-${two(p.month)}-${p.year}`)(wallMs)} ${clock(wallMs)}`,
  }),
  as('day first with dots', {
    time: (wallMs) => `${dated((p) => `${two(p.day)}.${two(p.month)}.${p.year}`)(wallMs)} ${clock(wallMs)}`,
  }),
  as('dots in date and time', {
    time: (wallMs) =>
      `${dated((p) => `${p.day}.${p.month}.${p.year}`)(wallMs)} ${clock(wallMs).replaceAll(':', '.')}`,
  }),
  as('two-digit years, month first', {
    time: (wallMs) =>
      `${dated((p) => `${two(p.month)}/${two(p.day)}/${p.year % 100}`)(wallMs)} ${clock(wallMs)}`,
  }),
  as('two-digit years, day first', {
    time: (wallMs) =>
      `${dated((p) => `${two(p.day)}.${two(p.month)}.${p.year % 100}`)(wallMs)} ${clock(wallMs)}`,
  }),
  as('two-digit years, year first', { time: (wallMs) => isoTime(wallMs).slice(2).replace(' ', 'T') }),
  as('month names', {
    time: (wallMs) =>
      `${dated((p) => `${two(p.day)}-${month[p.month - 1]}-${p.year}`)(wallMs)} ${clock(wallMs)}`,
  }),
  as('month names with two-digit years', {
    time: (wallMs) =>
      `${dated((p) => `${two(p.day)}-${month[p.month - 1]!.toUpperCase()}-${p.year % 100}`)(wallMs)} ${clock(wallMs)}`,
  }),
  {
    name: 'month names first, with a comma',
    content: () =>
      written({
        delimiter: ';',
        time: (wallMs) =>
          `${dated((p) => `${month[p.month - 1]} ${p.day}, ${p.year}`)(wallMs)} ${clock(wallMs)}`,
      }),
  },
  as('weekday and month names, year last', {
    time: (wallMs) => `${dated((p) => `Thu ${month[p.month - 1]} ${p.day}`)(wallMs)} ${clock(wallMs)} 2026`,
  }),
  as('24:00 for midnight', {
    time: (wallMs) =>
      wallMs % 86_400_000 === 0 && wallMs > Date.UTC(2026, 8, 3)
        ? `${isoTime(wallMs - 86_400_000).slice(0, 10)} 24:00:00`
        : isoTime(wallMs),
  }),
  as('midnight without a time of day', {
    time: (wallMs) => (wallMs % 86_400_000 === 0 ? isoTime(wallMs).slice(0, 10) : isoTime(wallMs)),
  }),
  as('date and time in two columns', {
    timeHeader: 'Date,Time',
    time: (wallMs) => isoTime(wallMs).replace(' ', ','),
  }),
  as('time before date in two columns', {
    timeHeader: 'Clock,Date',
    time: (wallMs) => `${clock(wallMs)},${dated((p) => `${p.month}/${p.day}/${p.year}`)(wallMs)}`,
  }),
  as('date and time in two columns with AM and PM', {
    timeHeader: 'Date,Time',
    time: (wallMs) =>
      `${dated((p) => `${p.month}/${p.day}/${p.year}`)(wallMs)},${twelve(wallMs, (pm) => (pm ? ' PM' : ' AM'))}`,
  }),
  as('UTC named in the header', { timeHeader: 'Time (UTC)', time: (wallMs) => isoTime(utcOf(wallMs)) }),
  as('an offset named in the header', {
    timeHeader: 'Timestamp UTC+02:00',
    time: (wallMs) => isoTime(utcOf(wallMs) + 7_200_000),
  }),
  as('seconds since 1970', { time: (wallMs) => String(utcOf(wallMs) / 1000) }),
  as('milliseconds since 1970', { time: (wallMs) => String(utcOf(wallMs)) }),
  as('spreadsheet serials', { time: (wallMs) => String(wallMs / 86_400_000 + 25_569) }),
  as('spreadsheet serials of ten decimals', { time: (wallMs) => (wallMs / 86_400_000 + 25_569).toFixed(10) }),
  as('spreadsheet serials of five decimals', { time: (wallMs) => (wallMs / 86_400_000 + 25_569).toFixed(5) }),
];

const wrongOrder = (lines: string[]): string[] => [lines[0]!, ...lines.slice(400), ...lines.slice(1, 400)];

export const layouts: readonly SameLog[] = [
  as('newest first', { changeLines: ([first, ...rest]) => [first!, ...rest.reverse()] }),
  as('out of order', { changeLines: wrongOrder }),
  as('every row twice', {
    changeLines: ([first, ...rest]) => [first!, ...rest.flatMap((line) => [line, line])],
  }),
  { name: 'long', content: () => long((row) => row) },
  { name: 'long with a unit column', content: () => long((row) => row, true) },
  {
    name: 'long, point by point',
    content: () => long((rows) => [...rows].sort((a, b) => a.column - b.column)),
  },
  { name: 'long with quality numbers', content: () => long((row) => row, false, ',192') },
  { name: 'long with a quality column', content: () => long((row) => row, false, ',Good') },
];

interface LongRow {
  readonly text: string;
  readonly column: number;
}

function long(arrange: (rows: LongRow[]) => LongRow[], units = false, quality = ''): string {
  const rows = plainRows().flatMap(({ wallMs, cells }) =>
    cells.flatMap((value, column): LongRow[] => {
      const unit = units ? `,${/\((.*)\)/u.exec(header[column]!)?.[1] ?? ''}` : '';
      if (value === null) return [];
      return [{ column, text: `${isoTime(wallMs)},${header[column]},${value}${unit}${quality}` }];
    }),
  );
  const columns = ['time', 'point', 'value', ...(units ? ['unit'] : []), ...(quality ? ['quality'] : [])];
  return `${[columns.join(','), ...arrange(rows).map(({ text }) => text)].join('\n')}\n`;
}

export const values: readonly SameLog[] = [
  as('the unit in every cell', {
    cell: (value, _row, column) =>
      typeof value === 'number'
        ? `${value} ${['°F', '°F', '°F', '', '', 'psig', '%'][column]}`
        : plainCell(value),
  }),
  as('decimals always written', {
    cell: (value) => (typeof value === 'number' ? value.toFixed(2) : plainCell(value)),
  }),
  as('plus signs', { cell: (value) => (typeof value === 'number' ? `+${value}` : plainCell(value)) }),
  as('exponents', {
    cell: (value) => (typeof value === 'number' ? value.toExponential() : plainCell(value)),
  }),
  as('words for missing', { cell: (value) => (value === null ? '---' : plainCell(value)) }),
  as('other words for states', {
    cell: (value) =>
      ({ ON: 'Active', OFF: 'inactive', OPEN: 'TRUE', CLOSED: 'False' })[String(value)] ?? plainCell(value),
  }),
  as('1 and 0 for states', {
    cell: (value) => ({ ON: '1', OFF: '0', OPEN: '1', CLOSED: '0' })[String(value)] ?? plainCell(value),
  }),
  as('German words for states', {
    cell: (value) =>
      ({ ON: 'Ein', OFF: 'Aus', OPEN: 'Offen', CLOSED: 'Zu' })[String(value)] ?? plainCell(value),
  }),
];
