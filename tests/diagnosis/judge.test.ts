import { expect, it } from 'vitest';
import { evidence, findings, judged, onDay, one, recovery, wholeRise } from './support.ts';

it('the list puts the worst first and ranks every circuit once', () => {
  const now = { limit: 5, at: onDay(13), earliest: null, latest: null, reason: null };
  const { findings: listed, circuits } = judged(
    recovery({ circuit: 'M02' }),
    wholeRise({ circuit: 'M03', projection: now }),
  );
  expect(listed.map(({ severity }) => severity)).toEqual(['act', 'watch']);
  expect(circuits.map(({ id, rank, worst }) => [id, rank, worst])).toEqual([
    ['M03', 1, 'act'],
    ['M02', 2, 'watch'],
    ['M01', 3, null],
  ]);
});

it('the list does not depend on the order of the evidence', () => {
  const seen = [
    recovery({ circuit: 'M02' }),
    wholeRise({ circuit: 'M03' }),
    evidence({ probe: 'M01 air B' }),
  ];
  expect(findings(...seen).map(({ id }) => id)).toEqual(findings(...seen.reverse()).map(({ id }) => id));
});

it('confidence grows with every independent view, and stays a probability', () => {
  const alone = one(wholeRise({ certainty: 0.6 })).confidence;
  const both = one(wholeRise({ certainty: 0.6 }), recovery({ certainty: 0.6, onset: onDay(5) })).confidence;
  expect(both).toBeGreaterThan(alone);
  expect(both).toBeLessThan(1);
});
