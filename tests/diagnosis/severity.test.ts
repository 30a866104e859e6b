import { expect, it } from 'vitest';
import { judge } from '../../src/diagnosis/judge.ts';
import { evidence, onDay, one, quietSignals, recovery, wholeRise } from './support.ts';

const projection = (days: number | null) => ({
  limit: 5,
  at: days === null ? null : onDay(14 + days),
  earliest: null,
  latest: null,
  reason: null,
});

const changedSetPoint = (by: number) =>
  evidence({
    analysis: 'left-off',
    kind: 'left-off',
    shape: 'set-point-changed',
    measures: [
      { name: 'setPointBefore', value: 25 / 9, low: null, high: null, unit: 'Cel' },
      { name: 'setPointNow', value: 25 / 9 + by, low: null, high: null, unit: 'Cel' },
    ],
    features: { setPointChange: by, fromColumn: 0, dutyChange: -0.2 },
  });

it.each([
  ['will reach its limit in 13 days', wholeRise({ projection: projection(13) }), 'act'],
  ['will reach it in 15', wholeRise({ projection: projection(15) }), 'watch'],
  ['has no date', wholeRise({ projection: projection(null) }), 'watch'],
  ['is less likely than not', wholeRise({ certainty: 0.3 }), 'note'],
  [
    'is over, and was small',
    evidence({ probe: 'M01 air A', onset: onDay(2), end: onDay(9), features: { shift: 1.1 } }),
    'note',
  ],
  [
    'is over, and was large',
    evidence({ probe: 'M01 air A', onset: onDay(2), end: onDay(9), features: { shift: 2 } }),
    'watch',
  ],
  [
    'was over within two days',
    evidence({ probe: 'M01 air A', end: onDay(6.9), features: { shift: 3 } }),
    'note',
  ],
  ['lasted longer', evidence({ probe: 'M01 air A', end: onDay(7.1), features: { shift: 3 } }), 'watch'],
  ['is a lie of 4.3 K', evidence({ probe: 'M01 air A', features: { shift: -4.3 } }), 'watch'],
  ['is a lie of 4.5 K', evidence({ probe: 'M01 air A', features: { shift: -4.5 } }), 'act'],
  ['is a single missed defrost', recovery({ kind: 'defrost-missed', shape: 'single' }), 'note'],
  [
    'concerns the record',
    evidence({ analysis: 'record-quality', kind: 'record-quality', shape: 'thin' }),
    'note',
  ],
  ['is a set point that somebody changed', changedSetPoint(2), 'note'],
  [
    'is a set point that somebody raised',
    wholeRise({
      shape: 'step',
      features: { rise: 1, compared: 1, dutyRise: -0.05, swingRatio: 1, dayNightRatio: 0 },
    }),
    'note',
  ],
])('of what %s', (_, seen, severity) => {
  expect(one(seen).severity).toBe(severity);
});

it('of defrosts somewhat longer since a colder set point is a note: a colder coil takes longer to end them', () => {
  const severity = (lengthRatio: number, onset: number, to: number) => {
    const { grid } = quietSignals.log;
    const at = Math.round((onDay(5) - grid.startMs) / grid.stepMs);
    const circuits = quietSignals.circuits.map((circuit) => ({
      ...circuit,
      setPointSteps: [{ at, from: 25 / 9, to, source: 'column' as const }],
    }));
    const longer = recovery({
      shape: 'extended',
      onset,
      features: { lengthRatio, heatedOn: 1, endedByTheClock: 1 },
    });
    return judge({ ...quietSignals, circuits }, { evidence: [longer], abstentions: [] }).findings[0]!
      .severity;
  };
  expect(severity(1.4, onDay(5.6), 1.7)).toBe('note');
  expect(severity(1.4, onDay(5.6), 3.9)).toBe('watch');
  expect(severity(1.4, onDay(4.6), 1.7)).toBe('watch');
  expect(severity(1.4, onDay(8), 1.7)).toBe('watch');
  expect(severity(1.9, onDay(5.6), 1.7)).toBe('watch');
});
