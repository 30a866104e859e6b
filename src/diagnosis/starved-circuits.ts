import type { Signals } from '../signals/types.ts';
import { ownTrouble } from './beyond-rack.ts';
import { isRecovery } from './circuit-rules.ts';
import type { Trouble } from './trouble.ts';

const liquidShapes: readonly string[] = ['creep', 'duty', 'trading-hours'];
/**
 * Of so many circuits, and of this share of those it serves, that want for liquid since their receiver went low, it is the cause:
 * the ones with the least reserve show it first, and two that began so by chance would be a rare thing.
 */
const fewestStarved = 2;
const starvedShare = 0.25;

/** A receiver so far under its usual level that its outlet may not be covered. */
export function isEmpty(rack: Trouble): boolean {
  return rack.evidence.some(({ shape }) => shape === 'level-low');
}

/**
 * What circuits show that want for liquid since the receiver went low; nothing where too few of them show it.
 *
 * @param cameWith whether a trouble began when the rack failed
 */
export function starvedBy(
  signals: Signals,
  rack: Trouble,
  troubles: readonly Trouble[],
  cameWith: (one: Trouble) => boolean,
): readonly Trouble[] {
  if (!isEmpty(rack)) return [];
  const served = servedWith(signals, rack);
  const starved = troubles.filter(
    (one) =>
      one.lead.circuit !== null &&
      served.includes(one.lead.circuit) &&
      one.lead.end === null &&
      wantsLiquid(one) &&
      cameWith(one),
  );
  const circuits = new Set(starved.map(({ lead }) => lead.circuit));
  return circuits.size >= Math.max(fewestStarved, starvedShare * served.length) ? starved : [];
}

/** The circuits of its group, and of the groups of its rack that log no receiver of their own: one receiver serves a rack. */
function servedWith({ groups }: Signals, { group }: Trouble): readonly string[] {
  if (group === null) return [];
  const others = groups.filter(
    (other) => other !== group && other.group.rack === group.group.rack && other.group.liquidLevel === null,
  );
  return [group, ...others].flatMap(({ members }) => members);
}

/** Liquid lacks most in the warm hours of the day: a coil that is warm in those alone may want for it, too, and one that is somewhat warm within days. */
function wantsLiquid(one: Trouble): boolean {
  const { scope, lead } = one;
  if (scope === 'superheat') return lead.shape === 'starving';
  if (isRecovery(one)) return true;
  if (scope !== 'whole-circuit') return false;
  const isWithinDays = lead.shape === 'step' && lead.features.sudden !== 1;
  return liquidShapes.includes(lead.shape) || (isWithinDays && (lead.features.rise ?? 0) < ownTrouble);
}
