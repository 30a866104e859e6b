import type { Evidence } from '../../model/evidence.ts';
import { samplesIn, timeAt } from '../../model/grid.ts';
import type { Log } from '../../model/log.ts';
import type { Record } from '../../model/record.ts';
import { recordNote } from './note.ts';
import { settings } from './settings.ts';

/** Stretches (samples, half open) in which no point of the whole export has a reading. */
export function siteGaps(log: Log, records: readonly Record[]): { from: number; to: number }[] {
  const least = samplesIn(log.grid, settings.gapMinutes.value);
  const gaps: { from: number; to: number }[] = [];
  let from = -1;
  // Most samples are settled by the record that knew the sample before.
  let last = 0;
  for (let i = 0; i <= log.grid.count; i++) {
    if (i < log.grid.count && !isKnown(records[last], i)) {
      last = Math.max(
        0,
        records.findIndex((record) => isKnown(record, i)),
      );
    }
    if (i < log.grid.count && !isKnown(records[last], i)) {
      if (from < 0) from = i;
    } else if (from >= 0) {
      if (i - from >= least) gaps.push({ from, to: i });
      from = -1;
    }
  }
  return gaps;
}

function isKnown(record: Record | undefined, sample: number): boolean {
  return record !== undefined && !Number.isNaN(record.values[sample]!);
}

export function gapEvidence(log: Log, gaps: readonly { from: number; to: number }[]): Evidence[] {
  if (gaps.length === 0) return [];
  const hours = ({ from, to }: { from: number; to: number }): number =>
    ((to - from) * log.grid.stepMs) / 3_600_000;
  const longest = gaps.reduce((a, b) => (hours(b) > hours(a) ? b : a));
  return [
    recordNote({
      shape: 'gap',
      circuit: null,
      suctionGroup: null,
      points: [],
      onset: timeAt(log.grid, longest.from),
      end: timeAt(log.grid, longest.to),
      certainty: 0.99,
      measures: [
        { name: 'longest gap', value: hours(longest), low: null, high: null, unit: 'h' },
        { name: 'gaps', value: gaps.length, low: null, high: null, unit: '1' },
        {
          name: 'time without any reading',
          value: gaps.reduce((sum, gap) => sum + hours(gap), 0),
          low: null,
          high: null,
          unit: 'h',
        },
      ],
    }),
  ];
}
