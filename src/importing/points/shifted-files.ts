import type { ImportIssue } from '../../model/import-report.ts';
import type { ReadingColumn } from '../readings.ts';
import { lowerBound } from './file-families.ts';
import { groupedBy } from './grouped-by.ts';

const quarterHourMs = 900_000;
/** Clocks differ by up to 26 hours over the world, and by quarters of an hour. */
const mostQuarters = 104;
const readingsCompared = 200;
/** A point must take so many values that its course cannot repeat by chance. */
const fewestValues = 20;
const equalShare = 0.97;
const mostPairs = 60;

/**
 * Files that were taken for different circuits because they carry the same names with other readings, where one repeats
 * the other at times moved by hours: the same log exported in two time zones, or by a clock that was not put forward.
 */
export function shiftedFiles(columns: readonly ReadingColumn[]): ImportIssue[] {
  const shifts = new Map<string, number>();
  const shared = [...groupedBy(columns, ({ point }) => point).values()].filter(({ length }) => length > 1);
  let pairs = 0;
  for (const [first, ...others] of shared) {
    for (const other of others) {
      const key = `${first!.fileStem} and ${other.fileStem}`;
      if (first!.fileStem === other.fileStem || shifts.has(key) || ++pairs > mostPairs) continue;
      const shift = shiftBetween(first!, other);
      if (shift !== null && shift !== 0) shifts.set(key, shift);
    }
  }
  return [...shifts].map(([files, shift]) => ({
    code: 'files-shifted',
    line: null,
    column: null,
    count: 1,
    message: `${files}: the second repeats the readings of the first at times moved by ${hoursOf(shift)}, so they were taken for different points. Leave one of them out, or export both with UTC offsets. [files-shifted]`,
  }));
}

function hoursOf(ms: number): string {
  const hours = Math.abs(ms) / 3_600_000;
  return `${ms < 0 ? '-' : '+'}${Number.isInteger(hours) ? hours : hours.toFixed(2)} h`;
}

/** The shift at which readings of `b` are those of `a`, in ms; null for none. */
function shiftBetween(a: ReadingColumn, b: ReadingColumn): number | null {
  if (a.status || b.status) return null;
  const middle = Math.max(0, (b.times.length >> 1) - (readingsCompared >> 1));
  const positions: number[] = [];
  for (let at = middle; at < b.times.length && positions.length < readingsCompared; at++)
    if (!Number.isNaN(b.values[at]!)) positions.push(at);
  if (new Set(positions.map((at) => b.values[at])).size < fewestValues) return null;
  for (let quarter = 0; quarter <= 2 * mostQuarters; quarter++) {
    const shift = (quarter % 2 === 0 ? 1 : -1) * Math.ceil(quarter / 2) * quarterHourMs;
    let equal = 0;
    for (const [tried, at] of positions.entries()) {
      const index = lowerBound(a.times, b.times[at]! - shift);
      if (a.times[index] === b.times[at]! - shift && a.values[index] === b.values[at]) equal++;
      if (tried === 20 && equal < 10) break;
    }
    if (equal >= equalShare * positions.length) return shift;
  }
  return null;
}
