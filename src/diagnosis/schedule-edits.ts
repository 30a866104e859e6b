import type { Evidence } from '../model/evidence.ts';
import type { Trouble } from './trouble.ts';

const hourMs = 3_600_000;
/** A schedule is edited circuit by circuit, within a day. */
const slackMs = 24 * hourMs;

/**
 * Circuits of one suction group whose defrosts have moved at about one time, though no clock explains it: their schedules
 * were edited. One remark for the group, with what became of each.
 */
export function scheduleEdits(troubles: readonly Trouble[]): Trouble[] {
  let open = [...troubles];
  for (const first of troubles) {
    if (!isMove(first) || first.lead.suctionGroup === null || !open.includes(first)) continue;
    const together = open.filter(
      (one) => isMove(one) && one.lead.suctionGroup === first.lead.suctionGroup && isTogether(first, one),
    );
    if (together.length < 2) continue;
    const edit = asOne(together);
    open = open.flatMap((one) => (one === first ? [edit] : together.includes(one) ? [] : [one]));
  }
  return open;
}

function isMove({ scope, lead }: Trouble): boolean {
  return scope === 'defrost' && lead.shape === 'moved' && lead.circuit !== null;
}

/** From the last defrost at an old hour to the first at a new one nobody knows when: these stretches meet. */
function isTogether({ lead: one }: Trouble, { lead: other }: Trouble): boolean {
  return one.onset <= seenBy(other) + slackMs && other.onset <= seenBy(one) + slackMs;
}

function seenBy({ onset, features }: Evidence): number {
  return onset + (features.hoursUntilSeen ?? 0) * hourMs;
}

function asOne(circuits: readonly Trouble[]): Trouble {
  const leads = circuits.map(({ lead }) => lead);
  const lead: Evidence = {
    ...leads[0]!,
    circuit: null,
    points: [...new Set(leads.flatMap(({ points }) => points))],
    onset: Math.min(...leads.map(({ onset }) => onset)),
    certainty: Math.max(...leads.map(({ certainty }) => certainty)),
    measures: [],
    features: { circuitsMoved: circuits.length },
  };
  return {
    ...circuits[0]!,
    lead,
    evidence: [lead, ...circuits.flatMap(({ evidence }) => evidence)],
    circuit: null,
    covers: leads.map(({ circuit }) => circuit!),
  };
}
