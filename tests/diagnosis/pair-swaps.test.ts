import { expect, it } from 'vitest';
import { evidence, findings, onDay } from './support.ts';

it('takes two probes of different circuits that jump at one moment the opposite way for exchanged', () => {
  const up = evidence({ probe: 'M01 air A', features: { shift: 2 } });
  const down = evidence({
    circuit: 'M02',
    probe: 'M02 air A',
    features: { shift: -1.8 },
    onset: up.onset + 60_000,
  });
  const causes = findings(up, down).map((finding) => finding.causes[0]!.cause);
  expect(causes).toEqual(['probe-swapped', 'probe-swapped']);
  const later = findings(up, { ...down, onset: up.onset + 2 * 3_600_000 });
  expect(later.map((finding) => finding.causes[0]!.cause)).not.toContain('probe-swapped');
});

it('gives two probes that each went over to the circuit of the other one date, and each its partner', () => {
  const gone = (circuit: string, other: string, onset: number) =>
    evidence({
      circuit,
      probe: `${circuit} air A`,
      shape: 'swapped',
      onset,
      points: [`${circuit} air A`, `${other} air A`, `${other} air B`],
    });
  const found = findings(gone('M01', 'M02', onDay(5)), gone('M02', 'M01', onDay(5.5)));
  expect(found.map(({ onset }) => onset)).toEqual([onDay(5), onDay(5)]);
  const summaries = found.map(({ summary }) => summary).sort();
  expect(summaries[0]).toMatch(/^M01: .* swapped with M02 air A there\.$/);
  expect(summaries[1]).toMatch(/^M02: .* swapped with M01 air A there\.$/);
  const apart = findings(gone('M01', 'M02', onDay(5)), gone('M02', 'M01', onDay(8)));
  expect(new Set(apart.map(({ onset }) => onset)).size).toBe(2);
  const jumped = (probe: string, shift: number) =>
    findings(
      { ...gone('M01', 'M02', onDay(5)), features: { shift: 2 } },
      evidence({ circuit: 'M02', probe, features: { shift }, onset: onDay(5) + 600_000 }),
    ).map(({ causes }) => causes[0]!.cause);
  expect(jumped('M02 air A', -2)).toEqual(['probe-swapped', 'probe-swapped']);
  expect(jumped('M02 air A', 2)).not.toEqual(['probe-swapped', 'probe-swapped']);
  const third = findings(gone('M01', 'M02', onDay(5)), gone('M02', 'M03', onDay(5.5)));
  expect(new Set(third.map(({ onset }) => onset)).size).toBe(2);
});
