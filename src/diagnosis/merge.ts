import { overlap, type Trouble, type TroubleScope } from './trouble.ts';

const dayMs = 86_400_000;
/** Two views of one trouble may begin days apart: the air follows the ice, the recovery follows the air. */
export const slackMs = 3 * dayMs;

/** When a trouble of scope `keeper` takes one of scope `guest` into itself. */
export interface Rule {
  readonly keeper: TroubleScope;
  readonly guest: TroubleScope;
  readonly when: (keeper: Trouble, guest: Trouble) => boolean;
}

/**
 * Applies the rules in their order to the troubles of one place; the first keeper that fits has the guest. Within one
 * scope the stronger view keeps the weaker.
 */
export function merge(troubles: readonly Trouble[], rules: readonly Rule[]): Trouble[] {
  let open = [...troubles];
  for (const rule of rules) {
    for (const candidate of open.filter((one) => one.scope === rule.keeper)) {
      const keeper = open.find((one) => one.lead === candidate.lead);
      if (keeper === undefined) continue;
      const guests = open.filter((guest) => isGuest(guest, keeper, rule));
      if (guests.length === 0) continue;
      const merged = {
        ...keeper,
        evidence: [...keeper.evidence, ...guests.flatMap((guest) => guest.evidence)],
      };
      open = open.filter((one) => !guests.includes(one)).map((one) => (one === keeper ? merged : one));
    }
  }
  return open;
}

function isGuest(guest: Trouble, keeper: Trouble, rule: Rule): boolean {
  return (
    guest !== keeper &&
    guest.scope === rule.guest &&
    (rule.keeper !== rule.guest || isStronger(keeper, guest)) &&
    overlap(keeper.lead, guest.lead, slackMs) &&
    rule.when(keeper, guest)
  );
}

const tellingShapes: readonly string[] = [
  'weak-rise',
  'extended',
  'ended-early',
  'by-the-clock',
  'overheated',
  'missed',
  'capacity-shortfall',
  'short-of-liquid',
  'target-raised',
  'target-left',
  'in-step',
  'moved',
];

/**
 * Of two telling views the one that the other follows from: frost that is not heated away also runs to the clock,
 * defrosts that come at other hours did not come at their own, and a target that a visit left elsewhere is a raised one.
 */
const firstShapes: readonly string[] = ['weak-rise', 'moved', 'target-left'];

/** The more telling view leads: the comparison with neighbours, the named fault; then what still lasts, then the surer. */
function isStronger(keeper: Trouble, guest: Trouble): boolean {
  const rank = ({ lead }: Trouble): number =>
    (lead.kind === 'probe-disagreement' || tellingShapes.includes(lead.shape) ? 1 : 0) +
    (firstShapes.includes(lead.shape) ? 0.5 : 0) +
    (lead.end === null ? 1 : 0) +
    lead.certainty / 2;
  const difference = rank(keeper) - rank(guest);
  if (difference !== 0) return difference > 0;
  if (keeper.lead.onset !== guest.lead.onset) return keeper.lead.onset < guest.lead.onset;
  const name = ({ lead }: Trouble): string => [...lead.points, lead.shape, lead.probe].join();
  return name(keeper) < name(guest);
}
