import type { Probe } from '../model/log.ts';
import type { RecordFacts } from './record-facts.ts';

/** A probe with less than this share of its samples, or one that never moves, says nothing of the case. */
const leastCoverage = 0.2;

export function isUsable({ record, known, lowest, highest }: RecordFacts): boolean {
  return known >= leastCoverage * record.values.length && highest > lowest;
}

export interface CircuitAir {
  /** Median over the usable probes at each sample: what at least half of them do. NaN where none is known. */
  readonly median: Float64Array;
  /** Mean over the usable probes at each sample. */
  readonly mean: Float64Array;
}

export function airOf(probes: readonly Probe[], usable: readonly boolean[], count: number): CircuitAir {
  const chosen = probes.filter((_, i) => usable[i]).map((probe) => probe.record.values);
  const air = { median: new Float64Array(count), mean: new Float64Array(count) };
  const [a, b, c] = chosen;
  if (chosen.length === 3) threeProbes(a!, b!, c!, air);
  else anyProbes(chosen, 0, count, air);
  return air;
}

/** Which of x, y, z lies between the others, by 4 (x < y) + 2 (y < z) + (x < z): looked up, not branched on. */
const between = Uint8Array.of(1, 1, 2, 0, 0, 2, 1, 1);

/** Stretches short enough that the engine compiles their loop as a function, once, not as a part of each long one. */
const stretch = 2048;

/** The usual number of probes on a line-up. */
function threeProbes(a: Float64Array, b: Float64Array, c: Float64Array, air: CircuitAir): void {
  const row = new Float64Array(3);
  for (let from = 0; from < air.mean.length; from += stretch) {
    const to = Math.min(air.mean.length, from + stretch);
    if (!threeInStretch(a, b, c, from, to, air, row)) fillGaps([a, b, c], from, to, air);
  }
}

/** Whether all three are known throughout; where one is not, both figures are NaN. */
function threeInStretch(
  a: Float64Array,
  b: Float64Array,
  c: Float64Array,
  from: number,
  to: number,
  { median, mean }: CircuitAir,
  row: Float64Array,
): boolean {
  let sum = 0;
  for (let i = from; i < to; i++) {
    const x = a[i]!;
    const y = b[i]!;
    const z = c[i]!;
    row[0] = x;
    row[1] = y;
    row[2] = z;
    const middle = (x + y + z) / 3;
    mean[i] = middle;
    sum += middle;
    median[i] = row[between[4 * Number(x < y) + 2 * Number(y < z) + Number(x < z)]!]!;
  }
  return !Number.isNaN(sum);
}

/** Where not all are known. */
function fillGaps(chosen: readonly Float64Array[], opening: number, closing: number, air: CircuitAir): void {
  const { mean } = air;
  for (let from = opening; from < closing; from++) {
    if (!Number.isNaN(mean[from]!)) continue;
    let to = from + 1;
    while (to < closing && Number.isNaN(mean[to]!)) to++;
    anyProbes(chosen, from, to, air);
    from = to;
  }
}

function anyProbes(
  chosen: readonly Float64Array[],
  from: number,
  to: number,
  { median, mean }: CircuitAir,
): void {
  const scratch = new Float64Array(chosen.length);
  for (let i = from; i < to; i++) {
    let known = 0;
    let sum = 0;
    for (let probe = 0; probe < chosen.length; probe++) {
      const value = chosen[probe]![i]!;
      if (Number.isNaN(value)) continue;
      scratch[known++] = value;
      sum += value;
    }
    mean[i] = sum / known;
    median[i] = known <= 2 ? sum / known : middleOf(scratch, known);
  }
}

/** Median of the first `known` entries, which it puts in order: insertion sort, for a handful of probes. */
function middleOf(scratch: Float64Array, known: number): number {
  for (let i = 1; i < known; i++) {
    const value = scratch[i]!;
    let j = i;
    while (j > 0 && scratch[j - 1]! > value) {
      scratch[j] = scratch[j - 1]!;
      j--;
    }
    scratch[j] = value;
  }
  const middle = known >> 1;
  return known % 2 === 1 ? scratch[middle]! : (scratch[middle - 1]! + scratch[middle]!) / 2;
}
