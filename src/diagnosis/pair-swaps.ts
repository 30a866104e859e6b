import type { Evidence } from '../model/evidence.ts';
import type { Trouble } from './trouble.ts';

const togetherMs = 60 * 60_000;
/** Two probes that each went over to the circuit of the other were exchanged once, even where one was dated less well. */
const mutualMs = 24 * togetherMs;
/** How alike the two shifts must be, smaller over larger. */
const alike = 0.6;

/**
 * Two probes of different circuits that jump at the same moment, one up by what the other goes down: their channels
 * were exchanged. Where the circuits defrost at different times the probes show it themselves, or one of them does; where not, only this
 * coincidence does. One exchange has one moment, the earlier of the two.
 */
export function pairSwaps(troubles: readonly Trouble[]): Trouble[] {
  const steps = troubles.filter((one) => one.scope === 'one-probe' && one.lead.shape === 'step');
  const swaps = troubles.filter((one) => one.scope === 'dead-probe' && one.lead.shape === 'swapped');
  const partnerOf = new Map<Trouble, Trouble>();
  for (const one of steps) {
    const partner = steps.find((other) => isExchange(one.lead, other.lead));
    if (partner !== undefined) partnerOf.set(one, partner);
  }
  for (const one of swaps) {
    const partner =
      swaps.find((other) => isMutual(one.lead, other.lead)) ??
      steps.find((other) => isOtherEnd(one.lead, other.lead));
    if (partner === undefined) continue;
    partnerOf.set(one, partner);
    partnerOf.set(partner, one);
  }
  return troubles.map((one) => {
    const partner = partnerOf.get(one);
    if (partner === undefined) return one;
    const lead: Evidence = {
      ...one.lead,
      shape: 'swapped',
      onset: Math.min(one.lead.onset, partner.lead.onset),
      points: [one.lead.probe!, partner.lead.probe!],
      features: { ...one.lead.features, partnerSeen: 1 },
    };
    return {
      ...one,
      scope: 'dead-probe',
      lead,
      evidence: [lead, ...one.evidence.filter((e) => e !== one.lead)],
    };
  });
}

/** Each sits among the probes of the other's circuit since about the same time. */
function isMutual(one: Evidence, other: Evidence): boolean {
  return (
    one.circuit !== other.circuit &&
    one.probe !== null &&
    other.probe !== null &&
    one.points.includes(other.probe) &&
    other.points.includes(one.probe) &&
    Math.abs(one.onset - other.onset) <= mutualMs
  );
}

/** A probe of the circuit that it went to, which jumped the opposite way in the same hour. */
function isOtherEnd(swap: Evidence, step: Evidence): boolean {
  return (
    swap.circuit !== step.circuit &&
    step.probe !== null &&
    swap.points.includes(step.probe) &&
    step.end === null &&
    Math.abs(swap.onset - step.onset) <= togetherMs &&
    (swap.features.shift ?? 0) * (step.features.shift ?? 0) < 0
  );
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
