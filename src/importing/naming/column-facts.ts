import type { Point } from '../points/point.ts';
import { spreadSample } from '../points/spread-sample.ts';

/** What the values of a column look like, whatever it is called. */
export interface ColumnFacts {
  readonly readings: number;
  readonly median: number;
  readonly low: number;
  readonly high: number;
  /** 10th and 90th percentile. */
  readonly p10: number;
  readonly p90: number;
  /** Distinct values, counted up to 12. */
  readonly distinct: number;
  /** Only 0 and 1 occur. */
  readonly binary: boolean;
  /** Share of readings above a half, for binary columns. */
  readonly onShare: number;
  /** Off-to-on changes a day. */
  readonly startsPerDay: number;
  /** Median minutes between a start and the next stop. */
  readonly onMinutes: number;
}

const valuesRead = 1500;
const mostDistinct = 12;
/** Places that are followed for starts and runs from the first reading on: two weeks of minutes. */
const mostFollowed = 20_000;

export function factsOf(point: Point): ColumnFacts {
  const sample = spreadSample(point.values, valuesRead);
  const sorted = sample.slice().sort();
  const at = (share: number): number => sorted[Math.round(share * (sorted.length - 1))] ?? Number.NaN;
  const distinct = new Set<number>();
  for (let index = 0; index < sample.length && distinct.size < mostDistinct; index++)
    distinct.add(sample[index]!);
  const binary =
    point.status || (distinct.size > 0 && [...distinct].every((value) => value === 0 || value === 1));
  return {
    readings: sorted.length,
    median: at(0.5),
    low: at(0),
    high: at(1),
    p10: at(0.1),
    p90: at(0.9),
    distinct: distinct.size,
    binary,
    ...(binary ? switching(point) : { onShare: Number.NaN, startsPerDay: Number.NaN, onMinutes: Number.NaN }),
  };
}

function switching(point: Point) {
  const end = Math.max(0, point.values.findIndex(Number.isFinite)) + mostFollowed;
  const times = point.times.subarray(0, end);
  const values = point.values.subarray(0, end);
  let onMs = 0;
  let starts = 0;
  let startedAt = Number.NaN;
  const runs: number[] = [];
  let on = values[0]! > 0.5;
  let since = times[0] ?? Number.NaN;
  for (let at = nextChange(values, 1, on); at < times.length; at = nextChange(values, at + 1, on)) {
    const now = times[at]!;
    if (on) {
      onMs += now - since;
      if (!Number.isNaN(startedAt)) runs.push((now - startedAt) / 60_000);
    } else {
      starts++;
      startedAt = now;
    }
    on = !on;
    since = now;
  }
  if (on) onMs += times[lastReading(values)]! - since;
  const spanMs = times.length > 1 ? times.at(-1)! - times[0]! : Number.NaN;
  runs.sort((a, b) => a - b);
  return {
    onShare: onMs / spanMs,
    startsPerDay: (starts / spanMs) * 86_400_000,
    onMinutes: runs[runs.length >> 1] ?? Number.NaN,
  };
}

/** First reading from `at` on that is in the other state; the length where none is. */
function nextChange(values: Float64Array, at: number, on: boolean): number {
  while (at < values.length && (values[at]! > 0.5 === on || Number.isNaN(values[at]!))) at++;
  return at;
}

function lastReading(values: Float64Array): number {
  let at = values.length - 1;
  while (Number.isNaN(values[at]!)) at--;
  return at;
}
