import { ucumCode } from '../units/ucum.ts';
import type { ReadingColumn, Readings } from './readings.ts';

const rowsPerChunk = 4096;

/**
 * The readings as one tidy CSV (contract §3): `time,point,value,unit`, by time and then by the order of the
 * columns, in pieces of some thousand rows.
 */
export function* normalizedChunks(readings: Readings): Iterable<string> {
  let chunk = 'time,point,value,unit\n';
  let rows = 0;
  const columns = [...readings.columns].sort((a, b) => a.order - b.order).map((column) => new Cursor(column));
  for (let time = earliest(columns); time < Number.POSITIVE_INFINITY; time = earliest(columns)) {
    const stamp = timeStamp(time);
    for (const cursor of columns) {
      const value = cursor.takeAt(time);
      if (Number.isNaN(value)) continue;
      chunk += `${stamp},${cursor.point},${cursor.status ? (value === 1 ? 'ON' : 'OFF') : plainNumber(value)},${cursor.unit}\n`;
      rows++;
    }
    if (rows < rowsPerChunk) continue;
    yield chunk;
    chunk = '';
    rows = 0;
  }
  if (chunk !== '') yield chunk;
}

class Cursor {
  readonly point: string;
  readonly unit: string;
  readonly status: boolean;
  private readonly times: Float64Array;
  private readonly values: Float64Array;
  private at = 0;

  constructor(column: ReadingColumn) {
    this.point = quoted(column.point);
    this.unit = column.unit === null || column.status ? '' : quoted(ucumCode(column.unit));
    this.status = column.status;
    this.times = column.times;
    this.values = column.values;
  }

  get nextTime(): number {
    return this.at < this.times.length ? this.times[this.at]! : Number.POSITIVE_INFINITY;
  }

  /** The value at `time`, NaN where there is none; moves on past it. */
  takeAt(time: number): number {
    return this.times[this.at] === time ? this.values[this.at++]! : Number.NaN;
  }
}

function earliest(columns: readonly Cursor[]): number {
  let time = Number.POSITIVE_INFINITY;
  for (const { nextTime } of columns) if (nextTime < time) time = nextTime;
  return time;
}

/** RFC 3339 in UTC, to the second, finer only where the reading is. */
function timeStamp(ms: number): string {
  const text = new Date(ms).toISOString();
  return ms % 1000 === 0 ? `${text.slice(0, -5)}Z` : text;
}

/** A number without an exponent. */
function plainNumber(value: number): string {
  const text = String(Object.is(value, -0) ? 0 : value);
  if (!text.includes('e')) return text;
  if (Math.abs(value) >= 1e21) return BigInt(value).toString();
  const [digits, exponent] = text.split('e') as [string, string];
  const decimals = (digits.split('.')[1]?.length ?? 0) - Number(exponent);
  return value.toFixed(Math.min(100, decimals));
}

function quoted(text: string): string {
  return /[",\r\n]/u.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
