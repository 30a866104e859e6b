import type { ExportUnit } from '../../units/export-units.ts';
import { unitNamed } from '../header/unit-words.ts';
import { unwrapped, visibleText } from './clean-text.ts';
import { type DecimalMark, type MarkEvidence, readNumberText } from './number-text.ts';
import { plainDigits } from './plain-digits.ts';
import { qualitySaysGood, type WordMeaning, wordMeaning } from './words.ts';

export type CellKind = 'empty' | 'number' | WordMeaning | 'overflow' | 'text';

export interface CellReading {
  readonly kind: CellKind;
  /** The number, for `number`; else NaN. */
  readonly value: number;
  /** A unit in the cell behind the number. */
  readonly unit: ExportUnit | null;
  readonly evidence: MarkEvidence;
  readonly ambiguous: boolean;
  /** A mark stands behind the number: `36.4*`, `36.4 H`, `36.4 {ok}`. */
  readonly marked: boolean;
}

const mostRemembered = 5000;

function plain(kind: CellKind, value = Number.NaN): CellReading {
  return { kind, value, unit: null, evidence: null, ambiguous: false, marked: false };
}

/** Reads value cells as text: numbers in any writing, units behind them, words. Remembers what it has read. */
export class CellReader {
  private readonly remembered = new Map<string, CellReading>();
  private mark: DecimalMark;

  constructor(mark: DecimalMark) {
    this.mark = mark;
  }

  get decimalMark(): DecimalMark {
    return this.mark;
  }

  read(text: string): CellReading {
    let reading = this.remembered.get(text);
    if (reading !== undefined) return reading;
    reading = readCell(text, this.mark);
    if (this.remembered.size >= mostRemembered) this.remembered.clear();
    this.remembered.set(text, reading);
    return reading;
  }
}

/** What one value cell says, with `mark` for numbers that could be read either way. */
export function readCell(text: string, mark: DecimalMark): CellReading {
  if (text.length > 200) return plain('text');
  let cell = unwrapped(visibleText(text));
  if (cell.startsWith("'") && /^'[-+.\d]/u.test(cell)) cell = cell.slice(1);
  if (cell === '') return plain('empty');
  cell = plainDigitsOf(cell);
  if (/^[-+\u2010-\u2015\u2212\ufe63\uff0d]?\s?[.,]?\d/u.test(cell)) {
    const number = numberCell(cell, mark);
    if (number !== null) return number;
  }
  return plain(wordMeaning(cell) ?? 'text');
}

/** Digits and marks of other scripts as plain ones; a number in brackets, as accountants write it, negative. */
function plainDigitsOf(cell: string): string {
  if (cell.startsWith('(') && /^\([\d.,]+\)$/u.test(cell)) return `-${cell.slice(1, -1)}`;
  return plainDigits(cell)
    .replace(/(?<=\d)[٫·．](?=\d)/gu, '.')
    .replace(/(?<=\d)[٬，](?=\d)/gu, ',');
}

/** What loggers put behind a number in alarm or out of range, or as its quality. */
const markedEnd = /^(.*?)(\{[^{}]{0,20}\}|[*!#†^]{1,3}|\((?:HH?|LL?)\)|(?<=^|\s)(?:HH?|LL?))$/u;

function numberCell(cell: string, mark: DecimalMark): CellReading | null {
  const reading = readNumberText(cell, mark);
  if (reading === null) return null;
  const [, behind = reading.rest, sign = null] = markedEnd.exec(reading.rest) ?? [];
  const rest = behind.trim();
  if (sign?.startsWith('{') === true) {
    const good = qualitySaysGood(sign);
    if (good !== true) return good === null ? null : plain('fault');
  }
  const bare = /^[°º˚]?$/u.test(rest);
  const unit = bare ? null : unitNamed(rest);
  if (!bare && unit === null) return null;
  if (!Number.isFinite(reading.value) || Math.abs(reading.value) > 1e300) return plain('overflow');
  return {
    kind: 'number',
    value: reading.value,
    unit,
    evidence: reading.evidence,
    ambiguous: reading.ambiguous,
    marked: sign !== null,
  };
}
