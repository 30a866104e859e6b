import type { Projection, Severity } from '../model/finding.ts';
import type { EpochMs } from '../units/quantities.ts';
import type { Judgement } from './judgement.ts';
import { featuresOf, type Trouble } from './trouble.ts';

const dayMs = 86_400_000;
/** A trouble less likely than this to be real is worth knowing, not a visit. */
export const leastConfidence = 0.5;
/** A limit that will be reached within this many days cannot wait for the next round. */
const actWithinDays = 14;
/** What ended by itself within this time was an event of the day. */
const shortDays = 2;
/** A lie this large leads the control far enough astray to act on, K. */
const largeLie = 4.4;

const harmlessCauses: readonly string[] = ['set-point', 'weather', 'normal-variation', 'service-visit'];

/** How soon somebody must look, by what is known now. */
export function severityOf(
  trouble: Trouble,
  judgement: Judgement,
  confidence: number,
  projection: Projection | null,
  now: EpochMs,
): Severity {
  const { lead } = trouble;
  const features = featuresOf(trouble);
  if (confidence < leastConfidence || harmlessCauses.includes(judgement.causes[0]!.cause)) return 'note';
  if (features.note === 1) return 'note';
  if (lead.end !== null) return lead.end - lead.onset < shortDays * dayMs ? 'note' : 'watch';
  switch (trouble.scope) {
    case 'record':
      return 'note';
    case 'dead-probe':
      return 'watch';
    case 'one-probe':
      if (judgement.origin === 'probe') return Math.abs(features.shift ?? 0) >= largeLie ? 'act' : 'watch';
      return reaches(projection, now) ? 'act' : 'watch';
    case 'whole-circuit':
      if (lead.shape === 'duty')
        return (features.dutyNow ?? 0) >= (features.dutyFull ?? 1) ? 'watch' : 'note';
      return reaches(projection, now) ? 'act' : 'watch';
    case 'left-off':
    case 'rack':
      return features.watchOnly === 1 ? 'watch' : 'act';
    default:
      return features.act === 1 || reaches(projection, now) ? 'act' : 'watch';
  }
}

function reaches(projection: Projection | null, now: EpochMs): boolean {
  return projection?.at != null && projection.at <= now + actWithinDays * dayMs;
}
