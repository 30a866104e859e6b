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
  const { values } = record;
  let known = 0;
  let sum = 0;
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (Number.isNaN(value)) continue;
    known++;
    sum += value;
    if (value < lowest) lowest = value;
    if (value > highest) highest = value;
  }
  return { record, known, lowest, highest, sum };
}
