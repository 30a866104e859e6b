import { type OddWindow, oddWindows, utcFromLocal, type ZoneTransitions } from './zone.ts';

/** Rows, by number, whose times are UTC already. */
export type HasOffset = (row: number) => boolean;

export function offsetLookup(toggles: readonly number[]): HasOffset {
  if (toggles.length === 0) return () => false;
  return (row) => {
    let low = 0;
    let high = toggles.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (toggles[middle]! <= row) low = middle + 1;
      else high = middle;
    }
    return low % 2 === 1;
  };
}

/** Brings times without an offset to UTC by the one that the header states, in place. */
export function applyHeaderOffset(
  times: Float64Array,
  rowOf: (index: number) => number,
  hasOffset: HasOffset,
  offsetMinutes: number,
): void {
  for (let index = 0; index < times.length; index++) {
    if (!hasOffset(rowOf(index))) times[index]! -= offsetMinutes * 60_000;
  }
}

/**
 * Turns wall-clock times, in the order of the file, into UTC in place. `seconds` holds the indices that belong
 * to the second coming of an hour that comes twice. Gives the indices that lay in an hour that never comes.
 */
export function settleTimes(
  times: Float64Array,
  rowOf: (index: number) => number,
  hasOffset: HasOffset,
  zone: ZoneTransitions,
  seconds: ReadonlySet<number>,
): ReadonlySet<number> {
  const moved = new Set<number>();
  const { starts, offsets } = zone;
  const skipped = oddWindows(zone).filter((window) => window.kind === 'never');
  let segment = 0;
  for (let index = 0; index < times.length; index++) {
    if (hasOffset(rowOf(index))) continue;
    const wall = times[index]!;
    const utc = wall - offsets[segment]!;
    if (
      utc - starts[segment]! > farFromChange &&
      (segment + 1 === starts.length || starts[segment + 1]! - utc > farFromChange)
    ) {
      times[index] = utc;
      continue;
    }
    const never = skipped.length > 0 && windowAt(skipped, wall) >= 0;
    if (never) moved.add(index);
    const settled = utcFromLocal(zone, wall, seconds.has(index) || never ? 'later' : 'earlier');
    times[index] = settled;
    while (segment + 1 < starts.length && starts[segment + 1]! <= settled) segment++;
    while (segment > 0 && starts[segment]! > settled) segment--;
  }
  return moved;
}

const farFromChange = 4 * 3_600_000;

/** One wall-clock time inside an odd hour: where it stands among its times, and its row in the file. */
export interface OddTime {
  readonly wallMs: number;
  readonly index: number;
  readonly row: number;
}

/** The times of a sequence that lie in odd hours, hour by hour, in the order of the file. */
export function oddTimes(
  times: Float64Array,
  rowOf: (index: number) => number,
  hasOffset: HasOffset,
  windows: readonly OddWindow[],
): OddTime[][] {
  const found = windows.map((): OddTime[] => []);
  if (windows.length === 0) return found;
  const from = windows[0]!.from;
  const to = windows.at(-1)!.to;
  for (let index = 0; index < times.length; index++) {
    const wallMs = times[index]!;
    if (wallMs < from || wallMs >= to) continue;
    const number = windowAt(windows, wallMs);
    if (number < 0 || hasOffset(rowOf(index))) continue;
    found[number]!.push({ wallMs, index, row: rowOf(index) });
  }
  return found;
}

/** Position of the window that holds `wallMs`, or -1. */
function windowAt(windows: readonly OddWindow[], wallMs: number): number {
  let low = 0;
  let high = windows.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (windows[middle]!.from <= wallMs) low = middle;
    else high = middle - 1;
  }
  const window = windows[low]!;
  return wallMs >= window.from && wallMs < window.to ? low : -1;
}

/** True where more steps of a sequence go back in time than forward: newest first. */
export function runsBackwards(times: Float64Array): boolean {
  let up = 0;
  let down = 0;
  for (let index = 1; index < times.length; index++) {
    if (times[index]! > times[index - 1]!) up++;
    else if (times[index]! < times[index - 1]!) down++;
  }
  return down > up;
}

/**
 * Those times of an hour that comes twice which belong to its second coming: from where time steps back inside
 * it; in a sequence without order, every time that comes again. `intervalMs` is the usual step: an hourly log
 * shows 01:00 and 01:00 again with nothing between.
 */
export function secondComing<T extends OddTime>(inside: readonly T[], intervalMs: number): readonly T[] {
  const back: number[] = [];
  for (let at = 1; at < inside.length; at++) if (inside[at]!.wallMs < inside[at - 1]!.wallMs) back.push(at);
  if (back.length === 1) return inside.slice(back[0]);
  if (back.length === 0) {
    const [first, second] = inside;
    const again = inside.length === 2 && first!.wallMs === second!.wallMs && intervalMs >= 1_800_000;
    return again ? [second!] : [];
  }
  const seen = new Set<number>();
  return inside.filter(({ wallMs }) => {
    const again = seen.has(wallMs);
    seen.add(wallMs);
    return again;
  });
}
