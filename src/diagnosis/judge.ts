import type { Abstention, Evidence } from '../model/evidence.ts';
import type { Diagnosis } from '../model/finding.ts';
import type { Signals } from '../signals/types.ts';
import { attribute } from './attribute.ts';
import { combinedCertainty, confidenceFrom } from './calibration.ts';
import { clockMoves } from './clock-moves.ts';
import { pairSwaps } from './pair-swaps.ts';
import { coverByRack } from './rack-cover.ts';
import { rankCircuits, rankFindings } from './rank.ts';
import { leastConfidence } from './severity.ts';
import { coverByStep } from './step-cover.ts';
import type { Trouble } from './trouble.ts';
import { troublesOf } from './troubles.ts';
import { warmSpell } from './warm-spell.ts';
import { wordFinding } from './wording/word-finding.ts';

/**
 * Evidence sorted into troubles, a rack's trouble taken for those of its circuits, each judged (whose fault, which
 * cause), worded and ranked worst first.
 */
export function judge(
  signals: Signals,
  seen: { readonly evidence: readonly Evidence[]; readonly abstentions: readonly Abstention[] },
): Diagnosis {
  const { grid } = signals.log;
  const now = grid.startMs + grid.count * grid.stepMs;
  const troubles = coverByRack(
    signals,
    coverByStep(clockMoves(pairSwaps(troublesOf(signals, seen.evidence)), signals.circuits)),
    (rack) =>
      confidence(rack) >= leastConfidence && rack.lead.features.note !== 1 && warmSpell(rack) !== 'weather',
  );
  const findings = rankFindings(
    troubles.map((trouble) => wordFinding(trouble, attribute(trouble), confidence(trouble), signals, now)),
    now,
  );
  return { findings, circuits: rankCircuits(signals, findings), abstentions: seen.abstentions };
}

function confidence(trouble: Trouble): number {
  return confidenceFrom(combinedCertainty(trouble.evidence.map((one) => one.certainty)));
}
