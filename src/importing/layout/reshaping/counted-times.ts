import { looksLikeHeader } from '../../header/looks-like-header.ts';
import { unitInHeader, unitNamed } from '../../header/unit-words.ts';
import { dayMs } from '../../time/civil.ts';
import { dateOrders, judgeOrder } from '../../time/date-order.ts';
import { TimeReader } from '../../time/time-reader.ts';
import { visibleText } from '../../values/clean-text.ts';
import { readTimeText } from '../cell-types.ts';
import type { SampleRow } from '../table-plan.ts';
import { roundedToClock, timeWords } from '../time-column.ts';
import type { PlanHints, Reshaping, Sample } from './reshaping.ts';

/** Headers of times that count from a start: no time of day. */
export const countsFromAStart =
  /elapsed|duration|since|relative|run ?time|dauer|laufzeit|écoulé|durée|duración|trascorso|durata|verstreken|^t$|^t[ _]?[([]/iu;
const countsReadings =
  /^(?:samples?|scans?|readings?|records?|no\.?|nr\.?|#|index|messung|mesure|muestra|campione)(?:[ _-]?(?:no\.?|nr\.?|number))?$/iu;
const startWords =
  /start|begin|began|begun|trigger|first|début|debut|anfang|inicio|inizio|aanvang|recording|logging|aufzeichnung/iu;
const otherTimes = /stop|end|last|print|export|report|creat|download|ende|fin\b|fine\b|einde|letzte/iu;
const stepWords = /interval|period|rate|every|step|scan|sampl|intervall|abstand|intervalle|intervalo|takt/iu;

const unitMs: { readonly [unit: string]: number } = { s: 1000, min: 60_000, h: 3_600_000 };
const fewestRows = 3;
const mostAbove = 100;

/**
 * Times that count from a start which a line above the header names: seconds, minutes, hours, `hh:mm:ss`, or readings
 * at an interval that is named there too.
 */
export function findCountedTimes({ rows }: Sample, hints: PlanHints): Reshaping | null {
  const found = countedColumn(rows);
  if (found === null || found.msOf === null) return null;
  const { at, headerRow, names, msOf } = found;
  const start = startAbove(rows, headerRow, hints);
  if (start === null || (found.mayBeClocks && start.ms % dayMs === 0)) return null;
  return {
    kind: 'counted-times',
    headerRow,
    header: names,
    choice: {
      about: 'time of a row',
      chosen: `counted from ${start.shown}`,
      because: `“${names[at]}” counts from a start, and a line above the header names it`,
      override: start.override,
    },
    begin: () => (cells) => {
      const ms = msOf(visibleText(cells[at] ?? ''));
      return [Number.isNaN(ms) ? cells : cells.with(at, `${stampOf(start.ms + ms)}${start.zone}`)];
    },
  };
}

/** Header of a column whose times count from a start that no line names, or null. */
export function countedWithoutStart(rows: readonly SampleRow[]): string | null {
  const found = countedColumn(rows);
  return found === null ? null : found.names[found.at]!;
}

interface CountedColumn {
  readonly at: number;
  readonly headerRow: number;
  readonly names: readonly string[];
  /** Milliseconds from the start of a cell; null where readings are counted and no line names their interval. */
  readonly msOf: ((text: string) => number) | null;
  /** True where the cells could be times of day as well, counted from midnight. */
  readonly mayBeClocks: boolean;
}

function countedColumn(rows: readonly SampleRow[]): CountedColumn | null {
  const headerRow = rows.findIndex(
    ({ cells }, row) =>
      row < mostAbove && cells.length > 1 && looksLikeHeader(cells.map(visibleText)) && isOverData(rows, row),
  );
  if (headerRow < 0) return null;
  const names = rows[headerRow]!.cells.map(visibleText);
  const data = rows.slice(headerRow + 1).map(({ cells }) => cells.map(visibleText));
  for (let at = 0; at < Math.min(3, names.length); at++) {
    const cells = data.map((row) => row[at] ?? '');
    const counts = cells.map((cell) => durationMs(cell, 1)).filter((ms) => !Number.isNaN(ms));
    if (counts.length < fewestRows || counts.length < 0.8 * data.length || !ascends(counts)) continue;
    const name = names[at]!;
    const counted = { at, headerRow, names };
    const areClocks = cells.some((cell) => /^\d+[.:]\d\d:\d\d/u.test(cell));
    const perUnit = unitOfCounts(name, cells[0]!);
    const says = countsFromAStart.test(name);
    if (areClocks && (says || (timeWords.test(name) && counts[0] === 0)))
      return { ...counted, msOf: (text) => durationMs(text, Number.NaN), mayBeClocks: !says };
    if (!areClocks && perUnit !== undefined)
      return { ...counted, msOf: (text) => durationMs(text, perUnit), mayBeClocks: false };
    if (!areClocks && says) return { ...counted, msOf: null, mayBeClocks: false };
    if (countsReadings.test(name) && counts.every((count, row) => count === counts[0]! + row)) {
      const step = stepAbove(rows, headerRow);
      const msOf = (text: string): number => (durationMs(text, 1) - counts[0]!) * step;
      return { ...counted, msOf: Number.isNaN(step) ? null : msOf, mayBeClocks: false };
    }
  }
  return null;
}

/** Milliseconds of one, after the name of the column or the cell of a units row below it. */
function unitOfCounts(name: string, unitCell: string): number | undefined {
  if (/\bms\b|millis/iu.test(name)) return 1;
  const word =
    /^(?:second|minute|hour|sekunde|stunde|seconde|heure|segundo|minuto|hora)/iu.exec(name)?.[0] ?? '';
  const ofWord = /^st|^h/iu.test(word) ? 'h' : /^m/iu.test(word) ? 'min' : word === '' ? '' : 's';
  return unitMs[unitInHeader(name) ?? unitNamed(unitCell) ?? ofWord];
}

function isOverData(rows: readonly SampleRow[], row: number): boolean {
  const width = rows[row]!.cells.length;
  const below = rows.slice(row + 1, row + 8).filter(({ cells }) => Math.abs(cells.length - width) < 2);
  return below.length >= Math.min(fewestRows, rows.length - row - 1);
}

/** `300`, `5.5`, `0:05:00`, `25:05:00`, `1.01:05:00`, `1 day 01:05:00`; NaN for anything else. */
function durationMs(text: string, perUnit: number): number {
  if (/^\d{1,12}(?:[.,]\d+)?$/u.test(text)) {
    const decimals = /[.,](\d+)$/u.exec(text)?.[1]?.length ?? 0;
    const ms = Number(text.replace(',', '.')) * perUnit;
    return decimals === 0 || perUnit === 1 ? ms : roundedToClock(ms, (perUnit / 2) * 10 ** -decimals);
  }
  const parts = /^(?:(\d{1,4})(?:\.| ?d(?:ays?)?,? ?| ))?(\d{1,5}):(\d\d)(?::(\d\d(?:[.,]\d+)?))?$/iu.exec(
    text,
  );
  if (parts === null) return Number.NaN;
  const [, days = '0', hours, minutes, seconds = '0'] = parts;
  return (
    Number(days) * dayMs +
    Number(hours) * 3_600_000 +
    Number(minutes) * 60_000 +
    Math.round(Number(seconds.replace(',', '.')) * 1000)
  );
}

function ascends(values: readonly number[]): boolean {
  const steps = values.slice(1).map((value, at) => value - values[at]!);
  return steps.every((step) => step >= 0) && steps.filter((step) => step > 0).length * 2 > steps.length;
}

function stampOf(ms: number): string {
  return new Date(ms).toISOString().slice(0, -1);
}

interface Start {
  readonly ms: number;
  readonly shown: string;
  readonly zone: string;
  readonly override: string | null;
}

/** The start that a line above the header names: in one text, or its date and its time of day on lines of their own. */
function startAbove(rows: readonly SampleRow[], headerRow: number, hints: PlanHints): Start | null {
  let date: string | null = null;
  let clock = '';
  for (const { cells } of rows.slice(0, headerRow)) {
    const line = cells
      .map(visibleText)
      .filter((cell) => cell !== '')
      .join(' ')
      .slice(0, 120);
    const [, label = ''] = /^([^\d]*)/u.exec(line) ?? [];
    if (!startWords.test(label) || otherTimes.test(label)) continue;
    const rest = line.slice(label.length);
    const reader = new TimeReader(null);
    for (const order of dateOrders) {
      reader.settleOn(order);
      if (Number.isNaN(readTimeText(reader, rest))) continue;
      if (reader.kind === 'date-time') return readStart(rest, hints);
      if (reader.kind === 'date') date = rest;
      else clock = rest;
      break;
    }
  }
  return date === null ? null : readStart(`${date} ${clock}`.trim(), hints);
}

function readStart(text: string, { dateOrder, isAmerican }: PlanHints): Start | null {
  const reader = new TimeReader(dateOrder);
  let ms = readTimeText(reader, text);
  if (reader.dateIsOpen && dateOrder === null) {
    const { order } = judgeOrder(reader.evidence, {
      dotted: reader.sawDots,
      twelveHourClock: reader.sawTwelveHourClock,
      decimalComma: false,
      americanZone: isAmerican,
      isoShape: reader.sawT,
    });
    reader.settleOn(order);
    ms = readTimeText(reader, text);
  }
  if (Number.isNaN(ms)) return null;
  const { offsetMinutes, dateIsOpen, order } = reader;
  const hasOffset = !Number.isNaN(offsetMinutes);
  const utc = ms - (hasOffset ? offsetMinutes * 60_000 : 0);
  return {
    ms: utc,
    shown: `${stampOf(ms).slice(0, 19).replace('T', ' ')}`,
    zone: hasOffset ? 'Z' : '',
    override: dateIsOpen ? (order === 'mdy' ? '--day-first' : '--month-first') : null,
  };
}

/** The interval of the readings that a line above names, in ms; NaN for none. */
function stepAbove(rows: readonly SampleRow[], headerRow: number): number {
  for (const { cells } of rows.slice(0, headerRow)) {
    const line = cells.map(visibleText).join(' ').slice(0, 120);
    const [, label = '', rest = ''] = /^([^\d]*)(.*)$/u.exec(line) ?? [];
    if (!stepWords.test(label)) continue;
    const [, amount = '', word = ''] = /^([\d.,:]+)\s*(\p{L}*)/u.exec(rest) ?? [];
    const perUnit = /^ms/iu.test(word) ? 1 : unitMs[unitNamed(word) ?? (word === '' ? 's' : '')];
    const ms = amount.includes(':')
      ? durationMs(amount, 1)
      : Number(amount.replace(',', '.')) * (perUnit ?? Number.NaN);
    if (ms > 0) return ms;
  }
  return Number.NaN;
}
