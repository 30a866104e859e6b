import { analyses } from '../analyses/registry.ts';
import type { Abstention, Evidence } from '../model/evidence.ts';
import type { Signals } from '../signals/types.ts';
import { groupOf } from './group-of.ts';

/** Runs every analysis over every circuit and suction group, in the order of the registry and of the site. */
export function gatherEvidence(signals: Signals): { evidence: Evidence[]; abstentions: Abstention[] } {
  const evidence: Evidence[] = [];
  const abstentions: Abstention[] = [];
  for (const analysis of analyses) {
    const verdicts =
      analysis.scope === 'circuit'
        ? signals.circuits.map((circuit) =>
            analysis.analyse(circuit, groupOf(signals, circuit.circuit.suctionGroup), signals),
          )
        : signals.groups.map((group) => analysis.analyse(group, signals));
    for (const verdict of verdicts) {
      evidence.push(...verdict.evidence);
      abstentions.push(...verdict.abstentions);
    }
  }
  return { evidence, abstentions };
}
