import { overlap, type Trouble } from './trouble.ts';

const dayMs = 86_400_000;
/** Two views of one trouble may begin days apart: the air follows the ice, the recovery follows the air. */
const slackMs = 3 * dayMs;

/**
 * Which trouble takes another of the same circuit into itself. The first one that fits wins: a circuit that is
 * off explains everything on it, a dead probe its own readings, a section that ices its slow recovery.
 */
type Rule = (keeper: Trouble, guest: Trouble) => boolean;

function sameProbe(keeper: Trouble, guest: Trouble): boolean {
  return keeper.lead.probe === guest.lead.probe;
}

const rules: readonly {
  readonly keeper: Trouble['scope'];
  readonly guest: Trouble['scope'];
  readonly when: Rule;
}[] = [
  { keeper: 'left-off', guest: 'left-off', when: () => true },
  { keeper: 'left-off', guest: 'whole-circuit', when: explains },
  {
    keeper: 'left-off',
    guest: 'one-probe',
    when: (k, g) => explains(k, g) && begins(g) >= begins(k) - dayMs,
  },
  { keeper: 'left-off', guest: 'defrost', when: explains },
  { keeper: 'left-off', guest: 'superheat', when: explains },
  { keeper: 'left-off', guest: 'cycling', when: explains },
  { keeper: 'dead-probe', guest: 'dead-probe', when: sameProbe },
  { keeper: 'dead-probe', guest: 'one-probe', when: sameProbe },
  { keeper: 'dead-probe', guest: 'record', when: sameProbe },
  { keeper: 'dead-probe', guest: 'whole-circuit', when: (k, g) => begins(g) >= begins(k) - slackMs },
  { keeper: 'record', guest: 'one-probe', when: (k, g) => k.lead.shape === 'unit-change' && sameProbe(k, g) },
  { keeper: 'one-probe', guest: 'one-probe', when: sameProbe },
  { keeper: 'defrost', guest: 'defrost', when: (k, g) => k.lead.kind === g.lead.kind },
  {
    keeper: 'defrost',
    guest: 'whole-circuit',
    when: (k, g) => isSpecific(k) && begins(g) >= begins(k) - slackMs,
  },
  { keeper: 'whole-circuit', guest: 'one-probe', when: (k, g) => changed(g) && isLarger(k, g) },
  { keeper: 'one-probe', guest: 'whole-circuit', when: (k, g) => changed(k) && follows(k, g) },
  { keeper: 'one-probe', guest: 'defrost', when: (k, g) => changed(k) && isRecovery(g) },
  { keeper: 'whole-circuit', guest: 'superheat', when: () => true },
  { keeper: 'whole-circuit', guest: 'defrost', when: (_, g) => isRecovery(g) },
  { keeper: 'superheat', guest: 'defrost', when: (_, g) => isRecovery(g) },
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

/** Of two views of one thing the more telling leads: the comparison with neighbours, the named fault of a defrost. */
function stronger(keeper: Trouble, guest: Trouble): boolean {
  const rank = (one: Trouble): number =>
    (one.lead.kind === 'probe-disagreement' || isSpecific(one) ? 1 : 0) +
    (one.lead.end === null ? 1 : 0) +
    one.lead.certainty / 2;
  const difference = rank(keeper) - rank(guest);
  return difference > 0 || (difference === 0 && keeper.lead.onset < guest.lead.onset);
}

function begins(trouble: Trouble): number {
  return trouble.lead.onset;
}

function changed(trouble: Trouble): boolean {
  return trouble.lead.features.sinceStart !== 1;
}

/** A stop or an override explains the air; a set point that was left changed only shifts it. */
function explains(keeper: Trouble, guest: Trouble): boolean {
  return keeper.lead.shape !== 'set-point-left' && overlap(keeper.lead, guest.lead, dayMs);
}

const recoveryShapes: readonly string[] = ['slow', 'not-recovered', 'lengthening'];

/** A slow recovery is the air's side of another trouble; weak heat, a wrong length or a missed defrost is its own. */
function isRecovery(trouble: Trouble): boolean {
  return recoveryShapes.includes(trouble.lead.shape);
}

function isSpecific(trouble: Trouble): boolean {
  return trouble.scope === 'defrost' && !isRecovery(trouble);
}

/**
 * All air of the circuit went up and one probe more or less than the others: one trouble, of the circuit when the
 * common part is the larger. The other way round a section that ices took the whole circuit with it.
 */
function isLarger(whole: Trouble, one: Trouble): boolean {
  const common = whole.lead.features.rise ?? 0;
  const apart = Math.abs(one.lead.features.shift ?? one.lead.features.rise ?? 0);
  return whole.lead.shape !== 'duty' && common > apart && begins(one) >= begins(whole) - slackMs;
}

/** A valve that feeds more is part of it even when it was first. */
function follows(one: Trouble, whole: Trouble): boolean {
  return begins(whole) >= begins(one) - (whole.lead.shape === 'duty' ? 3 : 1) * slackMs;
}
