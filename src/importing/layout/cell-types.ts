import { unitNamed } from '../header/unit-words.ts';
import type { DateOrder } from '../time/date-order.ts';
import { TimeReader } from '../time/time-reader.ts';
import { readCell } from '../values/cell-reader.ts';
import { unwrapped, visibleText } from '../values/clean-text.ts';

/** What a cell looks like by itself. `stamp` has a date and a time of day, `date` and `clock` one of them. */
export type CellType = 'empty' | 'stamp' | 'date' | 'clock' | 'number' | 'word' | 'unit' | 'text';

const encoder = new TextEncoder();
const scratch = new Uint8Array(256);

/** Reads a time stamp from text, as `TimeReader.read` does from bytes. */
export function readTimeText(reader: TimeReader, text: string): number {
  const shown = foldedTime(unwrapped(visibleText(text)));
  if (shown.length > 64) return Number.NaN;
  const { written } = encoder.encodeInto(shown, scratch);
  return reader.read(scratch, 0, written);
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

/** In plain letters and marks that every stamp has, without the zone's name in brackets (`GMT-0600 (…)`) and a mail's `>`. */
function foldedTime(text: string): string {
  let folded = text.endsWith(')') ? text.slice(0, text.lastIndexOf('(')).trimEnd() : text;
  if (folded.startsWith('>')) folded = folded.replace(/^[> ]+/u, '');
  if (folded.includes("'")) folded = folded.replace(/'(?=\d\d\b)/u, '');
  if (/[ap]m/iu.test(folded)) folded = folded.replace(/(\d\d)\.(\d\d)\.(\d\d)(?=[. ])/u, '$1:$2:$3');
  if (/^[ -~]*$/u.test(folded)) return folded;
  for (const [mark, plain] of eastAsianMarks) folded = folded.replace(mark, plain);
  return folded
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/gu, '')
    .replace(/[-:\s]+$/u, '');
}

const trial = new TimeReader(null);

const plainNumber = /^-?\d{1,7}(?:\.\d+)?$/u;

export function cellType(text: string, order: DateOrder | null = null): CellType {
  if (text === '') return 'empty';
  if (plainNumber.test(text)) return 'number';
  const shown = unwrapped(visibleText(text));
  if (shown === '') return 'empty';
  if (shown.length > 120) return 'text';
  if (shown.length <= 64 && /\d/u.test(shown) && !/^[-+]?\d+(?:[.,]\d*)?$/u.test(shown)) {
    const type = timeType(shown, order);
    if (type !== null) return type;
  } else if (/^(?:19|20)\d{6}(?:\d{4}|\d{6})?$/u.test(shown) && timeType(shown, order) !== null) {
    return shown.length === 8 ? 'date' : 'stamp';
  }
  const { kind } = readCell(shown, '.');
  if (kind === 'number' || kind === 'overflow') return 'number';
  if (kind === 'empty') return 'empty';
  if (kind !== 'text') return 'word';
  return unitNamed(shown) !== null ? 'unit' : 'text';
}

function timeType(shown: string, order: DateOrder | null): CellType | null {
  for (const tried of order === null ? (['mdy', 'dmy', 'ymd'] as const) : [order]) {
    trial.settleOn(tried);
    if (Number.isNaN(readTimeText(trial, shown))) continue;
    if (trial.kind === 'time') return 'clock';
    return trial.kind === 'date' ? 'date' : 'stamp';
  }
  return null;
}
