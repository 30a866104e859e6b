import { type Binary, logs, naughtyStrings, publicFiles } from './corpus.ts';
import { SeededDraws } from './random.ts';

type Damage = (text: Binary, draws: SeededDraws) => Binary;

/** Bytes that decide how a file is read: delimiters, line ends, quotes, marks of encodings, controls. */
const tellingBytes: readonly Binary[] = [
  ',',
  ';',
  '\t',
  '|',
  ' ',
  '\n',
  '\r',
  '\r\n',
  '"',
  "'",
  '""',
  '\0',
  '\x1a',
  '\f',
  '\xef\xbb\xbf',
  '\xff\xfe',
  '\xb0',
  '\xc2\xb0',
  '\xa0',
  '\xff',
  '\x80',
  '=',
  '-',
  '.',
  ':',
  '/',
  '0',
  '9',
  '#',
  '\\',
];
/** Cells that mean something to a reader of logs. */
const tellingCells: readonly Binary[] = [
  'Time',
  'Date',
  'time',
  'point',
  'value',
  'unit',
  'Quality',
  'M01 air A (\xb0F)',
  '°F',
  'psig',
  '2026-09-03 06:00:00',
  '2026-09-03',
  '06:00',
  '24:00',
  '9/3/2026 6:00 PM',
  '03.09.2026 06:00',
  '13/09/2026',
  '2026-11-01 01:30',
  '1788415200',
  '46268.25',
  '20260903060000',
  '2026-09-03T06:00:00-06:00',
  'ON',
  'OFF',
  'Open',
  'Def',
  'FAIL',
  '---',
  'NaN',
  '#N/A',
  '-40',
  '999',
  '327.67',
  '1,234',
  '3,4',
  '1.234,5',
  '-0',
  '1e5',
  '1e999',
  '\xe2\x88\x923.5',
  '12 %',
  '="5"',
  "'5",
  '=cmd|x',
  '__proto__',
  '192',
  '1',
  '0',
  '',
  ' ',
  '12345678901234567890',
];

const place = (text: Binary, draws: SeededDraws): number => draws.below(text.length + 1);
const span = (text: Binary, draws: SeededDraws, most = 200): [number, number] => {
  const from = place(text, draws);
  return [from, Math.min(text.length, from + draws.below(most))];
};
const onLines =
  (change: (lines: Binary[], draws: SeededDraws) => Binary[]): Damage =>
  (text, draws) =>
    change(text.split('\n'), draws).join('\n');
/** Changes the cells of some rows, taking the file's commonest delimiter for the one that counts. */
const onCells =
  (share: number, change: (cells: Binary[], draws: SeededDraws) => Binary[]): Damage =>
  (text, draws) => {
    const mark = delimiterOf(text);
    const each = share * draws.of([0.02, 0.3, 1]);
    return text
      .split('\n')
      .map((line) => (draws.chance(each) ? change(line.split(mark), draws).join(mark) : line))
      .join('\n');
  };

function delimiterOf(text: Binary): Binary {
  return [',', ';', '\t', '|'].toSorted((a, b) => text.split(b).length - text.split(a).length)[0]!;
}

const another = (draws: SeededDraws): Binary => draws.of(draws.chance(0.5) ? logs : publicFiles);
const cell = (draws: SeededDraws): Binary => draws.of(draws.chance(0.7) ? tellingCells : naughtyStrings);

const damages: readonly Damage[] = [
  // Bytes.
  (text, draws) => {
    const at = place(text, draws);
    return text.slice(0, at) + String.fromCharCode(draws.below(256)) + text.slice(at + 1);
  },
  (text, draws) => {
    const at = place(text, draws);
    return text.slice(0, at) + draws.of(tellingBytes) + text.slice(at + draws.below(2));
  },
  (text, draws) => {
    const [from, to] = span(text, draws);
    return text.slice(0, from) + text.slice(to);
  },
  (text, draws) => {
    const [from, to] = span(text, draws);
    return text.slice(0, to) + text.slice(from);
  },
  (text, draws) => text.slice(0, place(text, draws)),
  (text, draws) => text.slice(place(text, draws)),
  // One mark for another throughout: delimiters, decimal marks, quotes, line ends.
  (text, draws) =>
    text.replaceAll(draws.of([',', ';', '\t', '|', '.', ':', '-', ' ', '"', '\n']), draws.of(tellingBytes)),
  (text, draws) =>
    text.replaceAll('.', ',').replaceAll(/(?<=,[^,\n]*),/gu, () => (draws.chance(0.9) ? ';' : ',')),
  (text, draws) =>
    text.replaceAll('\n', draws.of(['\r\n', '\r', '\r\r\n', '\n\n', ' \n', ',\n', '\n ', '\n"'])),
  // Lines.
  onLines((lines, draws) => lines.toSpliced(draws.below(lines.length), 1 + draws.below(4))),
  onLines((lines, draws) => lines.toSpliced(draws.below(lines.length), 0, draws.of(lines))),
  onLines((lines, draws) =>
    lines.toSpliced(draws.below(lines.length), 0, lines[0]!, ...(draws.chance(0.5) ? [lines[1] ?? ''] : [])),
  ),
  onLines((lines) => lines.toReversed()),
  onLines((lines, draws) => {
    const at = draws.below(lines.length);
    return [...lines.slice(at), ...lines.slice(0, at)];
  }),
  onLines((lines, draws) =>
    lines.flatMap((line) =>
      draws.chance(0.2) ? [draws.of(['', ' ', 'note', ',,,,,,,', '"', line]), line] : [line],
    ),
  ),
  // Cells.
  onCells(1, (cells, draws) => cells.with(draws.below(cells.length), cell(draws))),
  onCells(1, (cells, draws) =>
    cells.toSpliced(draws.below(cells.length), draws.below(2), ...(draws.chance(0.5) ? [cell(draws)] : [])),
  ),
  onCells(1, (cells) => cells.map((each) => `"${each}"`)),
  onCells(1, (cells, draws) => cells.map((each) => (draws.chance(0.3) ? `'${each}'` : ` ${each} `))),
  onCells(1, (cells, draws) =>
    cells.map((each) => (draws.chance(0.2) ? `"${each.replaceAll('"', '""')}\n"` : each)),
  ),
  onCells(1, (cells) => [...cells.slice(1), cells[0]!]),
  // Encodings.
  (text) => text.replaceAll(/./gsu, (mark) => `${mark}\0`),
  (text) => text.replaceAll(/./gsu, (mark) => `\0${mark}`),
  (text) => Buffer.from(text, 'utf8').toString('latin1'),
  (text) => `\xef\xbb\xbf${text}`,
  // Two files: one below the other, one inside the other, side by side.
  (text, draws) => text + another(draws),
  (text, draws) => another(draws) + text,
  (text, draws) => {
    const at = place(text, draws);
    return text.slice(0, at) + another(draws) + text.slice(at);
  },
  (text, draws) => {
    const other = another(draws).split('\n');
    return text
      .split('\n')
      .map((line, at) => line + delimiterOf(text) + (other[at] ?? ''))
      .join('\n');
  },
  (text, draws) => {
    const other = another(draws);
    return text.slice(0, place(text, draws)) + other.slice(place(other, draws));
  },
];

const mostBytes = 60_000;

/** One file of the corpus, damaged one to five times: the same for the same seed. */
export function damagedFile(seed: number): Binary {
  const draws = new SeededDraws(seed);
  let text = draws.of(draws.chance(0.7) ? logs : publicFiles);
  const times = 1 + draws.below(5);
  for (let each = 0; each < times; each++) text = draws.of(damages)(text, draws).slice(0, mostBytes);
  return text;
}
