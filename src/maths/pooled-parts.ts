import { countedQuantiles } from './counted-quantiles.ts';
import { selectQuantiles } from './select-rank.ts';

/** Readings of one series that are divided into parts: the hours of a kind of day, the days of a probe. */
export interface PartedSeries {
  readonly values: Float64Array;
  /** Where each reading stands; −1 leaves it out, as NaN in `values` does. */
  readonly places: Int32Array;
  /** The part of every place. */
  readonly partOf: Int32Array;
}

/** Parts whose readings can be pooled again and again, in many ways. */
export interface PooledParts {
  /** Type 7 of Hyndman and Fan, for ascending `shares`, of the readings of these parts together; NaN each for none. */
  quantiles(parts: readonly number[], shares: readonly number[]): number[];
  count(part: number): number;
  /** How many readings of the part lie above `limit`. */
  above(part: number, limit: number): number;
  /** The parts from `from` to `to` (exclusive) alone, numbered from 0; nothing is copied. */
  slice(from: number, to: number): PooledParts;
  /** Larger parts, each pooled from some of these once: cheaper where many pools share them. */
  pooled(groups: readonly (readonly number[])[]): PooledParts;
}

/**
 * Exact either way: where the readings stand on the steps of `resolution` each step is counted, and pooling is adding
 * up counts; else they are sorted by their parts and selected from.
 *
 * @param resolution step in which all series were logged; 0 where none is known
 */
export function pooledParts(series: readonly PartedSeries[], parts: number, resolution: number): PooledParts {
  return countedParts(series, parts, resolution) ?? selectedParts(series, parts);
}

/** Of one step in one part; they are counted in two bytes each, since there may be very many. */
const mostCounted = 0xffff;
/** More steps than these are no coarse log: counting them pays off no longer. */
const mostSteps = 4096;

/** Counts of each step in each part; null where the readings do not stand on steps, on very many, or too often on one. */
export function countedParts(
  series: readonly PartedSeries[],
  parts: number,
  resolution: number,
): PooledParts | null {
  const ranges = series.map(rangeOf);
  const low = Math.min(...ranges.map(([lowest]) => lowest!));
  const high = Math.max(...ranges.map(([, highest]) => highest!));
  const steps = Math.round((high - low) / resolution) + 1;
  if (!(resolution > 0 && steps >= 1 && steps <= mostSteps)) return null;
  const shown = new Float64Array(steps).fill(Number.NaN);
  const counts = new Uint16Array(parts * steps);
  const totals = new Int32Array(parts);
  const counted = { low, perStep: 1 / resolution, shown, counts, totals };
  if (!series.every((one) => countSteps(one, counted))) return null;
  return partsOfCounts(shown, counts, totals);
}

type Counts = Uint16Array | Int32Array;

/**
 * @param counts of every step in every part, part by part
 * @param totals of every part
 */
function partsOfCounts(shown: Float64Array, counts: Counts, totals: Int32Array): PooledParts {
  const steps = shown.length;
  const scratch = new Int32Array(steps);
  const countsOf = (part: number): Counts => counts.subarray(part * steps, (part + 1) * steps);
  return {
    quantiles(chosen, shares) {
      const [first] = chosen;
      if (chosen.length === 1) return countedQuantiles(shown, countsOf(first!), shares, totals[first!]!);
      scratch.fill(0);
      let total = 0;
      for (const part of chosen) {
        addCounts(scratch, counts, part * steps);
        total += totals[part]!;
      }
      return countedQuantiles(shown, scratch, shares, total);
    },
    count: (part) => totals[part]!,
    slice: (from, to) =>
      partsOfCounts(shown, counts.subarray(from * steps, to * steps), totals.subarray(from, to)),
    above: (part, limit) => sumOf(countsOf(part).subarray(firstAbove(shown, limit))),
    pooled(groups) {
      const larger = new Int32Array(groups.length * steps);
      const together = new Int32Array(groups.length);
      for (const [group, parts] of groups.entries()) {
        const own = larger.subarray(group * steps, (group + 1) * steps);
        for (const part of parts) {
          addCounts(own, counts, part * steps);
          together[group]! += totals[part]!;
        }
      }
      return partsOfCounts(shown, larger, together);
    },
  };
}

interface Steps {
  readonly low: number;
  readonly perStep: number;
  /** The value that a step shows; NaN before it was met. */
  readonly shown: Float64Array;
  readonly counts: Uint16Array;
  readonly totals: Int32Array;
}

/** Stretches short enough that the engine compiles their loop as a function, once, not as a part of each long one. */
const stretch = 2048;

/** False where two different values fall on one step, or too many on one. */
function countSteps(series: PartedSeries, steps: Steps): boolean {
  const { length } = series.values;
  for (let from = 0; from < length; from += stretch) {
    if (!countStretch(series, steps, from, Math.min(length, from + stretch))) return false;
  }
  return true;
}

function countStretch(
  { values, places, partOf }: PartedSeries,
  { low, perStep, shown, counts, totals }: Steps,
  from: number,
  to: number,
): boolean {
  for (let i = from; i < to; i++) {
    const place = places[i]!;
    const value = values[i]!;
    if (place < 0 || Number.isNaN(value)) continue;
    const step = Math.floor((value - low) * perStep + 0.5);
    if (shown[step] !== value) {
      if (!Number.isNaN(shown[step]!)) return false;
      shown[step] = value;
    }
    const part = partOf[place]!;
    const at = part * shown.length + step;
    if (counts[at] === mostCounted) return false;
    counts[at]!++;
    totals[part]!++;
  }
  return true;
}

/** Lowest and highest reading that stands anywhere; ∞ and −∞ of none. */
function rangeOf(series: PartedSeries): Float64Array {
  const range = Float64Array.of(Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY);
  const { length } = series.values;
  for (let from = 0; from < length; from += stretch)
    widen(range, series, from, Math.min(length, from + stretch));
  return range;
}

function widen(range: Float64Array, { values, places }: PartedSeries, from: number, to: number): void {
  let low = range[0]!;
  let high = range[1]!;
  for (let i = from; i < to; i++) {
    if (places[i]! < 0) continue;
    const value = values[i]!;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  range[0] = low;
  range[1] = high;
}

function addCounts(pooled: Int32Array, counts: Counts, from: number): void {
  for (let k = 0; k < pooled.length; k++) pooled[k]! += counts[from + k]!;
}

function sumOf(counts: Counts): number {
  let sum = 0;
  for (let k = 0; k < counts.length; k++) sum += counts[k]!;
  return sum;
}

/** First step that shows a value above `limit`; steps that were never met show none. */
function firstAbove(shown: Float64Array, limit: number): number {
  let k = 0;
  while (k < shown.length && !(shown[k]! > limit)) k++;
  return k;
}

/** The same of any readings, by selection. */
export function selectedParts(series: readonly PartedSeries[], parts: number): PooledParts {
  const starts = new Int32Array(parts + 1);
  for (const one of series) countIn(one, starts);
  for (let part = 0; part < parts; part++) starts[part + 1]! += starts[part]!;
  const ends = starts.slice(0, parts);
  const parted = new Float64Array(starts[parts]!);
  for (const one of series) placeIn(one, ends, parted);
  return partsOfReadings(
    Array.from({ length: parts }, (_, part) => parted.subarray(starts[part]!, starts[part + 1]!)),
  );
}

/** Parts of one reading each; NaN for none. */
export function singleParts(values: Float64Array): PooledParts {
  const known = (parts: readonly number[]): Float64Array => {
    const readings = new Float64Array(parts.length);
    let count = 0;
    for (const part of parts) if (!Number.isNaN(values[part]!)) readings[count++] = values[part]!;
    return readings.subarray(0, count);
  };
  return {
    quantiles: (chosen, shares) => selectQuantiles(known(chosen), shares),
    count: (part) => (Number.isNaN(values[part]!) ? 0 : 1),
    slice: (from, to) => singleParts(values.subarray(from, to)),
    above: (part, limit) => (values[part]! > limit ? 1 : 0),
    pooled: (groups) => partsOfReadings(groups.map(known)),
  };
}

/** @param readings of every part, in any order */
function partsOfReadings(readings: readonly Float64Array[]): PooledParts {
  const scratch = new Float64Array(readings.reduce((sum, { length }) => sum + length, 0));
  const pool = (chosen: readonly number[], into: Float64Array): number => {
    let count = 0;
    for (const part of chosen) {
      into.set(readings[part]!, count);
      count += readings[part]!.length;
    }
    return count;
  };
  return {
    quantiles: (chosen, shares) => selectQuantiles(scratch, shares, pool(chosen, scratch)),
    count: (part) => readings[part]!.length,
    slice: (from, to) => partsOfReadings(readings.slice(from, to)),
    above: (part, limit) => countAbove(readings[part]!, limit),
    pooled: (groups) => partsOfReadings(groups.map((parts) => scratch.slice(0, pool(parts, scratch)))),
  };
}

/** Adds the readings of each part to the entry after its own. */
function countIn({ values, places, partOf }: PartedSeries, starts: Int32Array): void {
  for (let i = 0; i < values.length; i++) {
    if (places[i]! >= 0 && !Number.isNaN(values[i]!)) starts[partOf[places[i]!]! + 1]!++;
  }
}

function placeIn({ values, places, partOf }: PartedSeries, ends: Int32Array, parted: Float64Array): void {
  for (let i = 0; i < values.length; i++) {
    if (places[i]! >= 0 && !Number.isNaN(values[i]!)) parted[ends[partOf[places[i]!]!]!++] = values[i]!;
  }
}

function countAbove(readings: Float64Array, limit: number): number {
  let above = 0;
  for (let i = 0; i < readings.length; i++) if (readings[i]! > limit) above++;
  return above;
}
