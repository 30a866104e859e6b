import type { Evidence } from '../../model/evidence.ts';
import { samplesIn, timeAt } from '../../model/grid.ts';
import type { Log } from '../../model/log.ts';
import type { Record } from '../../model/record.ts';
import type { Stretch } from '../../signals/defrost/stretch.ts';
import { recordNote } from './note.ts';
import { settings } from './settings.ts';

/** Stretches (samples, half open) in which no point of the whole export has a reading. */
export function siteGaps(log: Log, records: readonly Record[]): Stretch[] {
  const least = samplesIn(log.grid, settings.gapMinutes.value);
  let gaps: Stretch[] = [{ from: 0, to: log.grid.count }];
  for (const { values } of records) {
    gaps = gaps.flatMap((gap) => unknownIn(values, gap, least));
    if (gaps.length === 0) break;
  }
  return gaps.filter(({ from, to }) => to - from >= least);
}

/** Those of a stretch's parts without a reading that are `least` samples long. */
function unknownIn(values: Float64Array, { from, to }: Stretch, least: number): Stretch[] {
  const found: Stretch[] = [];
  let known = from - 1;
  for (let i = from; i <= to; i++) {
    if (i < to && Number.isNaN(values[i]!)) continue;
    if (i - known - 1 >= least) found.push({ from: known + 1, to: i });
    known = i;
  }
  return found;
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
