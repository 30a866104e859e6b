import { overlap, type Trouble } from './trouble.ts';

const dayMs = 86_400_000;
/** Two views of one trouble may begin days apart: the air follows the ice, the recovery follows the air. */
const slackMs = 3 * dayMs;

/**
 * Which trouble takes another of the same circuit into itself. The first one that fits wins: a circuit that is
 * off explains everything on it, a dead probe its own readings, a section that ices its slow recovery.
 */
type Rule = (keeper: Trouble, guest: Trouble) => boolean;

const sameProbe: Rule = (keeper, guest) => keeper.lead.probe === guest.lead.probe;

const rules: readonly {
  readonly keeper: Trouble['scope'];
  readonly guest: Trouble['scope'];
  readonly when: Rule;
}[] = [
  { keeper: 'left-off', guest: 'whole-circuit', when: () => true },
  { keeper: 'left-off', guest: 'one-probe', when: (k, g) => begins(g) >= begins(k) - dayMs },
  { keeper: 'left-off', guest: 'defrost', when: () => true },
  { keeper: 'left-off', guest: 'superheat', when: () => true },
  { keeper: 'left-off', guest: 'cycling', when: () => true },
  { keeper: 'dead-probe', guest: 'dead-probe', when: sameProbe },
  { keeper: 'dead-probe', guest: 'one-probe', when: sameProbe },
  { keeper: 'dead-probe', guest: 'record', when: sameProbe },
  { keeper: 'record', guest: 'one-probe', when: (k, g) => k.lead.shape === 'unit-change' && sameProbe(k, g) },
  { keeper: 'one-probe', guest: 'one-probe', when: sameProbe },
  {
    keeper: 'one-probe',
    guest: 'defrost',
    when: (k, g) => g.lead.kind === 'defrost-recovery' && sameProbe(k, g),
  },
  {
    keeper: 'one-probe',
    guest: 'whole-circuit',
    when: (k, g) => changed(k) && begins(g) >= begins(k) - slackMs,
  },
  { keeper: 'superheat', guest: 'whole-circuit', when: () => true },
  { keeper: 'defrost', guest: 'whole-circuit', when: (k, g) => begins(g) >= begins(k) - slackMs },
  { keeper: 'defrost', guest: 'defrost', when: (k, g) => k.lead.kind === g.lead.kind },
  {
    keeper: 'whole-circuit',
    guest: 'defrost',
    when: (k, g) => g.lead.kind === 'defrost-recovery' && begins(k) <= begins(g),
  },
  { keeper: 'cycling', guest: 'cycling', when: () => true },
];

export function mergeWithinCircuit(troubles: readonly Trouble[]): Trouble[] {
  let open = [...troubles];
  for (const rule of rules) {
    for (const keeper of open.filter((one) => one.scope === rule.keeper)) {
      if (!open.includes(keeper)) continue;
      const guests = open.filter(
        (guest) =>
          guest !== keeper &&
          guest.scope === rule.guest &&
          (rule.keeper !== rule.guest || stronger(keeper, guest)) &&
          overlap(keeper.lead, guest.lead, slackMs) &&
          rule.when(keeper, guest),
      );
      if (guests.length === 0) continue;
      const merged: Trouble = {
        ...keeper,
        evidence: [...keeper.evidence, ...guests.flatMap((guest) => guest.evidence)],
      };
      open = open.filter((one) => !guests.includes(one)).map((one) => (one === keeper ? merged : one));
    }
  }
  return open;
}

/** Of two views of one probe the comparison with its neighbours leads: it carries what tells truth from lie. */
function stronger(keeper: Trouble, guest: Trouble): boolean {
  const rank = (one: Trouble): number =>
    (one.lead.kind === 'probe-disagreement' ? 1 : 0) + one.lead.certainty / 2;
  const difference = rank(keeper) - rank(guest);
  return difference > 0 || (difference === 0 && keeper.lead.onset <= guest.lead.onset);
}

const begins = (trouble: Trouble): number => trouble.lead.onset;
const changed = (trouble: Trouble): boolean => trouble.lead.features.sinceStart !== 1;
