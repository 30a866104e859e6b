import type { Evidence } from '../../model/evidence.ts';
import type { Log } from '../../model/log.ts';
import type { RecordFacts } from '../../signals/record-facts.ts';
import { recordNote } from './note.ts';
import { settings } from './settings.ts';

/** A column that moves less than this many steps of its own resolution proves nothing by being equal. */
const leastSteps = 4;

/** Two moving columns with the same readings: one channel logged under two names. */
export function twins(
  facts: readonly RecordFacts[],
  where: { readonly circuit: string | null; readonly suctionGroup: string | null },
  log: Log,
): Evidence[] {
  const evidence: Evidence[] = [];
  const moving = facts.filter(
    ({ record, lowest, highest, known }) =>
      known > 0 && highest - lowest > leastSteps * Math.max(0.05, record.resolution),
  );
  moving.forEach((first, position) => {
    for (const second of moving.slice(position + 1)) {
      if (!sameReadings(first, second)) continue;
      evidence.push(
        recordNote({
          ...where,
          shape: 'twin',
          points: [first.record.point, second.record.point],
          onset: log.grid.startMs,
          end: null,
          certainty: 0.95,
          measures: [],
        }),
      );
    }
  });
  return evidence;
}

function sameReadings(first: RecordFacts, second: RecordFacts): boolean {
  const mostDifferent = (1 - settings.twinShare.value) * Math.min(first.known, second.known);
  let different = 0;
  let compared = 0;
  for (let i = 0; i < first.record.values.length; i++) {
    const a = first.record.values[i]!;
    const b = second.record.values[i]!;
    if (Number.isNaN(a) || Number.isNaN(b)) continue;
    compared++;
    if (a !== b && ++different > mostDifferent) return false;
  }
  return compared > 0;
}
