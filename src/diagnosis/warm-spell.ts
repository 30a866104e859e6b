import { featuresOf, type Trouble } from './trouble.ts';

const spellShapes: readonly string[] = ['high', 'capacity-shortfall'];

/** How a high suction that comes back every night, and that brought no air to its limit, is to be taken. */
export type Spell = 'weather' | 'open' | null;

/**
 * `weather`: it is over; or the hours before were as high in weather as warm; or, where no weather is logged, the rack had such a
 * spell before and healed. `open`: it goes on and nothing tells yet. Null where it is no spell: it stays by night, a machine no
 * longer runs, the air of a circuit is at its limit, weather as warm was borne before, or condensing explains it.
 */
export function warmSpell(trouble: Trouble): Spell {
  const { lead } = trouble;
  const features = featuresOf(trouble);
  if (!spellShapes.includes(lead.shape) || features.backEveryNight !== 1 || features.limitReached === 1)
    return null;
  if ((features.deadCompressors ?? 0) > 0 || features.condensingRise !== undefined) return null;
  if (lead.end !== null || features.weatherExplains === 1) return 'weather';
  if (features.weatherExplains === 0) return null;
  return features.spellBefore === 1 ? 'weather' : 'open';
}
