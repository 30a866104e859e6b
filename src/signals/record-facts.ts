import type { Record } from '../model/record.ts';

/** What one pass over a record tells: how many samples are known, between what they lie, their sum. */
export interface RecordFacts {
  readonly record: Record;
  readonly known: number;
  readonly lowest: number;
  readonly highest: number;
  readonly sum: number;
}

/** Stretches short enough that the engine compiles their loop as a function, once, not as a part of each long one. */
const stretch = 2048;

export function factsOf(record: Record): RecordFacts {
  const counted = { known: 0, lowest: Number.POSITIVE_INFINITY, highest: Number.NEGATIVE_INFINITY, sum: 0 };
  for (let from = 0; from < record.values.length; from += stretch) {
    countStretch(counted, record.values, from, Math.min(record.values.length, from + stretch));
  }
  return { record, ...counted };
}

function countStretch(
  counted: { known: number; lowest: number; highest: number; sum: number },
  values: Float64Array,
  from: number,
  to: number,
): void {
  let { known, lowest, highest, sum } = counted;
  for (let i = from; i < to; i++) {
    const value = values[i]!;
    if (Number.isNaN(value)) continue;
    known++;
    sum += value;
    if (value < lowest) lowest = value;
    if (value > highest) highest = value;
  }
  counted.known = known;
  counted.lowest = lowest;
  counted.highest = highest;
  counted.sum = sum;
}
