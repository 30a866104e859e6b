import type { Evidence } from '../model/evidence.ts';
import type { Trouble } from './trouble.ts';

const togetherMs = 60 * 60_000;
/** How alike the two shifts must be, smaller over larger. */
const alike = 0.6;

/**
 * Two probes of different circuits that jump at the same moment, one up by what the other goes down: their channels
 * were exchanged. Where the circuits defrost at different times the probes show it themselves; where not, only this
 * coincidence does.
 */
export function pairSwaps(troubles: readonly Trouble[]): Trouble[] {
  const steps = troubles.filter((one) => one.scope === 'one-probe' && one.lead.shape === 'step');
  const partnerOf = new Map<Trouble, Trouble>();
  for (const one of steps) {
    const partner = steps.find((other) => isExchange(one.lead, other.lead));
    if (partner !== undefined) partnerOf.set(one, partner);
  }
  return troubles.map((one) => {
    const partner = partnerOf.get(one);
    if (partner === undefined) return one;
    const lead: Evidence = {
      ...one.lead,
      shape: 'swapped',
      points: [one.lead.probe!, partner.lead.probe!],
    };
    return {
      ...one,
      scope: 'dead-probe',
      lead,
      evidence: [lead, ...one.evidence.filter((e) => e !== one.lead)],
    };
  });
}

function isExchange(one: Evidence, other: Evidence): boolean {
  const a = one.features.shift ?? 0;
  const b = other.features.shift ?? 0;
  return (
    one.circuit !== other.circuit &&
    one.end === null &&
    other.end === null &&
    Math.abs(one.onset - other.onset) <= togetherMs &&
    a * b < 0 &&
    Math.min(Math.abs(a), Math.abs(b)) >= alike * Math.max(Math.abs(a), Math.abs(b))
  );
}
