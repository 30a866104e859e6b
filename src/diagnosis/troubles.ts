import type { Evidence } from '../model/evidence.ts';
import type { Signals } from '../signals/types.ts';
import { circuitRules } from './circuit-rules.ts';
import { groupOf } from './group-of.ts';
import { groupRules } from './group-rules.ts';
import { merge } from './merge.ts';
import type { Trouble, TroubleScope } from './trouble.ts';

const deadShapes: readonly string[] = ['stuck', 'open-or-short', 'silent', 'flutter', 'swapped', 'episodes'];

export function scopeOf(evidence: Evidence): TroubleScope {
  switch (evidence.kind) {
    case 'upward-drift':
      return evidence.probe === null ? 'whole-circuit' : 'one-probe';
    case 'probe-disagreement':
      return deadShapes.includes(evidence.shape) ? 'dead-probe' : 'one-probe';
    case 'short-cycling':
      return 'cycling';
    case 'defrost-recovery':
    case 'defrost-missed':
      return 'defrost';
    case 'rack-pressure':
      return 'rack';
    case 'superheat':
      return 'superheat';
    case 'left-off':
      return 'left-off';
    case 'record-quality':
      return 'record';
  }
}

/** Sorts all evidence into troubles: one for everything that is about the same thing at the same time. */
export function troublesOf(signals: Signals, evidence: readonly Evidence[]): Trouble[] {
  const single = evidence.map(
    (one): Trouble => ({
      scope: scopeOf(one),
      lead: one,
      evidence: [one],
      circuit: signals.circuits.find((circuit) => circuit.circuit.id === one.circuit) ?? null,
      group: groupOf(signals, one.suctionGroup),
      covers: [],
    }),
  );
  const ofCircuits = [...new Set(single.map((one) => one.lead.circuit))].filter((id) => id !== null);
  const ofGroups = single.filter((one) => one.lead.circuit === null);
  return [
    ...ofCircuits.flatMap((id) =>
      merge(
        single.filter((one) => one.lead.circuit === id),
        circuitRules,
      ),
    ),
    ...[...new Set(ofGroups.map((one) => one.lead.suctionGroup))].flatMap((id) =>
      merge(
        ofGroups.filter((one) => one.lead.suctionGroup === id),
        groupRules,
      ),
    ),
  ];
}
