import type { Diagnosis } from '../model/finding.ts';
import type { Signals } from '../signals/types.ts';
import { attribute } from './attribute.ts';
import { combinedCertainty, confidenceFrom } from './calibration.ts';
import { gatherEvidence } from './gather.ts';
import { coverByRack } from './rack-cover.ts';
import { rankCircuits, rankFindings } from './rank.ts';
import { leastConfidence } from './severity.ts';
import type { Trouble } from './trouble.ts';
import { troublesOf } from './troubles.ts';
import { wordFinding } from './word.ts';

/**
 * From signals to what is said of a site: every analysis is run, its evidence sorted into troubles, troubles of a
 * rack taken for those of its circuits, each judged (whose fault, which cause), worded and ranked worst first.
 */
export function diagnose(signals: Signals): Diagnosis {
  const { grid } = signals.log;
  const now = grid.startMs + grid.count * grid.stepMs;
  const { evidence, abstentions } = gatherEvidence(signals);
  const troubles = coverByRack(
    signals,
    troublesOf(signals, evidence),
    (rack) => confidence(rack) >= leastConfidence && rack.lead.features.note !== 1,
  );
  const findings = rankFindings(
    troubles.map((trouble) => wordFinding(trouble, attribute(trouble), confidence(trouble), signals, now)),
    now,
  );
  return { findings, circuits: rankCircuits(signals, findings), abstentions };
}

function confidence(trouble: Trouble): number {
  return confidenceFrom(combinedCertainty(trouble.evidence.map((one) => one.certainty)));
}
