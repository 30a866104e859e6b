import { unitNamed } from '../header/unit-words.ts';
import type { DateOrder } from '../time/date-order.ts';
import { plainStamp } from '../time/plain-stamp.ts';
import { TimeReader } from '../time/time-reader.ts';
import { readCell } from '../values/cell-reader.ts';
import { unwrapped, visibleText } from '../values/clean-text.ts';
import { plainDigits } from '../values/plain-digits.ts';

/** What a cell looks like by itself. `stamp` has a date and a time of day, `date` and `clock` one of them. */
export type CellType = 'empty' | 'stamp' | 'date' | 'clock' | 'number' | 'word' | 'unit' | 'text';

const encoder = new TextEncoder();
const scratch = new Uint8Array(256);

/** Reads a time stamp from text, as `TimeReader.read` does from bytes. */
export function readTimeText(reader: TimeReader, text: string): number {
  const { text: shown, isInterval } = plainStamp(unwrapped(visibleText(text)));
  if (shown.length > 64) return Number.NaN;
  const { written } = encoder.encodeInto(shown, scratch);
  const time = reader.read(scratch, 0, written);
  if (isInterval && !Number.isNaN(time)) reader.sawInterval = true;
  return time;
}

const trial = new TimeReader(null);

const plainNumber = /^-?\d{1,7}(?:\.\d+)?$/u;

export function cellType(text: string, order: DateOrder | null = null): CellType {
  if (text === '') return 'empty';
  if (plainNumber.test(text)) return 'number';
  const shown = plainDigits(unwrapped(visibleText(text)));
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
