import type { ReadingColumn } from '../readings.ts';
import { editDistance } from '../site-file/nearest-name.ts';

/** Share of the readings at the same times that must agree for two files to repeat each other. */
const agreeingShare = 0.95;
const comparedReadings = 500;

/** What two columns of one header say of their files: the same points, different ones, or neither. */
type Meeting = 'same' | 'different' | 'silent';
/** States agree by chance, set points too; readings that move through more values than this do not. */
const fewestTelling = 3;
/** A single reading may have been corrected in one of two files. */
const fewestApart = 3;
/** Files that continue each other overlap by less than this of the shorter one. */
const mostOverlap = 0.2;

/**
 * Tells which files hold the same points: a family continues itself in time or repeats itself, and carries no
 * header twice with different readings. `shared` holds, for each header that several files carry, its columns.
 */
export function fileFamilies(shared: readonly (readonly ReadingColumn[])[]): (fileStem: string) => string {
  const contradictions = new Set<string>();
  const meetings = new Map<string, readonly [string, string]>();
  for (const columns of shared) {
    for (let i = 0; i < columns.length; i++) {
      for (let j = i + 1; j < columns.length; j++) {
        const pair = [columns[i]!.fileStem, columns[j]!.fileStem] as const;
        const meeting = pair[0] === pair[1] ? 'same' : meetingOf(columns[i]!, columns[j]!);
        if (meeting === 'same') meetings.set(keyOf(...pair), pair);
        if (meeting === 'different') contradictions.add(keyOf(...pair));
      }
    }
  }
  const family = new Map<string, Set<string>>();
  const membersOf = (stem: string): Set<string> => family.get(stem) ?? new Set([stem]);
  const nearestFirst = [...meetings.values()].sort(
    (a, b) => editDistance(...shortened(a)) - editDistance(...shortened(b)),
  );
  for (const [a, b] of nearestFirst) {
    const together = new Set([...membersOf(a), ...membersOf(b)]);
    if (anyPair(together, (x, y) => contradictions.has(keyOf(x, y)))) continue;
    for (const stem of together) family.set(stem, together);
  }
  return (stem) => [...membersOf(stem)].sort()[0]!;
}

function keyOf(a: string, b: string): string {
  return a < b ? `${a}\n${b}` : `${b}\n${a}`;
}

function shortened([a, b]: readonly [string, string]): [string, string] {
  return [a.slice(-80), b.slice(-80)];
}

function anyPair(members: ReadonlySet<string>, test: (a: string, b: string) => boolean): boolean {
  const list = [...members];
  return list.some((a, index) => list.slice(index + 1).some((b) => test(a, b)));
}

/**
 * Two columns read over the same time are one point where their movements agree. Only readings off the usual value
 * tell: two defrosts of different circuits are both off for most of the day, and set points stand still.
 */
function meetingOf(a: ReadingColumn, b: ReadingColumn): Meeting {
  const from = Math.max(a.times[0] ?? Number.POSITIVE_INFINITY, b.times[0] ?? Number.POSITIVE_INFINITY);
  const to = Math.min(a.times.at(-1) ?? Number.NEGATIVE_INFINITY, b.times.at(-1) ?? Number.NEGATIVE_INFINITY);
  if (!(from < to)) return 'same';
  const pairs = readTogether(a, b, from, to);
  // Nothing at the same instant although both cover the stretch: two loggers with clocks of their own.
  if (pairs.length === 0) return overlapShare(a, b, from, to) > mostOverlap ? 'different' : 'same';
  const usual = mostFrequent(pairs.map(([first]) => first));
  const telling = pairs.filter(([first, second]) => first !== usual || second !== usual);
  const equal = telling.filter(([first, second]) => first === second);
  const apart = telling.length - equal.length;
  if (apart >= fewestApart && equal.length < telling.length * agreeingShare) return 'different';
  if (overlapShare(a, b, from, to) <= mostOverlap) return 'same';
  return new Set(equal.map(([first]) => first)).size >= fewestTelling ? 'same' : 'silent';
}

/** Values that both have at the same instant, thinned out. */
function readTogether(
  a: ReadingColumn,
  b: ReadingColumn,
  from: number,
  to: number,
): (readonly [number, number])[] {
  const pairs: (readonly [number, number])[] = [];
  const first = lowerBound(a.times, from);
  const last = lowerBound(a.times, to + 1);
  const stride = Math.max(1, Math.floor((last - first) / comparedReadings));
  for (let index = first; index < last; index += stride) {
    const other = lowerBound(b.times, a.times[index]! + 1) - 1;
    if (other < 0 || Number.isNaN(a.values[index]!) || Number.isNaN(b.values[other]!)) continue;
    if (b.times[other] !== a.times[index] && a.logging === 'sampled') continue;
    pairs.push([a.values[index]!, b.values[other]!]);
  }
  return pairs;
}

function mostFrequent(values: readonly number[]): number {
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts].reduce((most, entry) => (entry[1] > most[1] ? entry : most))[0];
}

function overlapShare(a: ReadingColumn, b: ReadingColumn, from: number, to: number): number {
  const shorter = Math.min(a.times.at(-1)! - a.times[0]!, b.times.at(-1)! - b.times[0]!);
  return shorter <= 0 ? 0 : (to - from) / shorter;
}

/** First position whose time is at or after `time`. */
export function lowerBound(times: Float64Array, time: number): number {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (times[middle]! < time) low = middle + 1;
    else high = middle;
  }
  return low;
}
