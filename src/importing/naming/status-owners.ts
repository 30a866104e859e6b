import { type Movements, normalised, product } from './movements.ts';
import type { NameGroup } from './name-groups.ts';
import type { NamedColumn } from './role.ts';

export interface BehaviourOwner {
  readonly group: NameGroup;
  readonly role: 'defrost' | 'valve';
  readonly confidence: number;
  readonly because: string;
}

/** A state moves a circuit's air if this much of the air's rise and fall goes with it. */
const leastCorrelation = 0.2;
/** And the next best circuit must follow it by no more than this share. */
const clearlyBetter = 0.7;

/**
 * The circuit whose air rises while a state is on (its defrost) or falls (its valve), for columns whose name
 * says neither; null where no circuit, or more than one, follows it.
 */
export function ownerByBehaviour(
  column: NamedColumn,
  groups: readonly NameGroup[],
  movements: Movements,
): BehaviourOwner | null {
  const state = normalised(withoutGaps(movements.level(column.point)));
  const effects = groups
    .map((group) => ({ group, effect: effectOn(group, state, movements) }))
    .sort((a, b) => Math.abs(b.effect) - Math.abs(a.effect));
  const [best, next] = effects;
  if (best === undefined || Math.abs(best.effect) < leastCorrelation) return null;
  if (next !== undefined && Math.abs(next.effect) > clearlyBetter * Math.abs(best.effect)) return null;
  const { startsPerDay } = column.facts;
  const rises = best.effect > 0;
  if (column.role === 'valve' && rises) return null;
  if (column.role === 'defrost' && !rises) return null;
  if (rises && (startsPerDay < 0.5 || startsPerDay > 12)) return null;
  return {
    group: best.group,
    role: rises ? 'defrost' : 'valve',
    confidence: Math.min(0.85, 0.4 + Math.abs(best.effect)),
    because: `the air of this circuit ${rises ? 'rises' : 'falls'} while it is on`,
  };
}

function effectOn(group: NameGroup, state: Float64Array, movements: Movements): number {
  const changes = new Float64Array(state.length);
  for (const { column } of group.air) {
    const level = movements.level(column.point);
    for (let index = 0; index + 1 < level.length; index++) {
      const change = level[index + 1]! - level[index]!;
      if (!Number.isNaN(change)) changes[index] = changes[index]! + change;
    }
  }
  return product(normalised(changes), state);
}

function withoutGaps(level: Float64Array): Float64Array {
  return level.map((value) => (Number.isNaN(value) ? 0 : value));
}
