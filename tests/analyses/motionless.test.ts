import fc from 'fast-check';
import { expect, test } from 'vitest';
import { longestRun } from '../../src/analyses/probe-disagreement/motionless.ts';

/** The plainest way to say the same: every sample is looked at. */
function longestRunSampleBySample(values: readonly number[], least: number) {
  let best: { from: number; to: number } | null = null;
  for (let from = 0; from < values.length; from++) {
    if (Number.isNaN(values[from]!)) continue;
    let to = from + 1;
    for (let i = to; i < values.length && (Number.isNaN(values[i]!) || values[i] === values[from]); i++)
      if (values[i] === values[from]) to = i + 1;
    if (to - from >= least && (best === null || to - from > best.to - best.from)) best = { from, to };
  }
  return best;
}

test('the longest run of one reading is that of a search sample by sample', () => {
  const reading = fc.oneof(
    { weight: 6, arbitrary: fc.constant(4) },
    { weight: 1, arbitrary: fc.constantFrom(5, 6) },
    { weight: 2, arbitrary: fc.constant(Number.NaN) },
  );
  fc.assert(
    fc.property(fc.array(reading, { maxLength: 120 }), fc.integer({ min: 1, max: 20 }), (values, least) => {
      expect(longestRun(Float64Array.from(values), least)).toEqual(longestRunSampleBySample(values, least));
    }),
    { numRuns: 500 },
  );
});
