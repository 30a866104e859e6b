import type { FileContext } from '../reading/file-context.ts';
import type { ValueTally } from './value-tally.ts';

/** What the numbers of one column say about themselves: units that change, ends of the scale, standstill. */
export function judgeColumn(
  values: Float64Array,
  _times: Float64Array,
  tally: ValueTally,
  _context: FileContext,
  _lineOf: (index: number) => number | null,
): void {
  const [first] = tally.unitSegments;
  if (tally.unit === null && first !== undefined && values.length > 0) {
    tally.unit = first.unit;
    tally.unitSource = 'cell';
  }
}
