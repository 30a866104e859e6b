import type { Record } from '../../model/record.ts';

/** One pass over a record. */
export interface RecordFacts {
  readonly record: Record;
  readonly known: number;
  readonly lowest: number;
  readonly highest: number;
  readonly sum: number;
}

export function factsOf(record: Record): RecordFacts {
  let known = 0;
  let sum = 0;
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (const value of record.values) {
    if (Number.isNaN(value)) continue;
    known++;
    sum += value;
    if (value < lowest) lowest = value;
    if (value > highest) highest = value;
  }
  return { record, known, lowest, highest, sum };
}
