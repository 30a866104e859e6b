import type { ValueTally } from '../values/value-tally.ts';

/** The readings of one point from one table, in time order, in the unit of the export. */
export interface ReadingPart {
  readonly tally: ValueTally;
  readonly times: Float64Array;
  readonly values: Float64Array;
  readonly status: boolean;
  readonly logging: 'sampled' | 'change-of-value';
  readonly ended?: Float64Array;
}
