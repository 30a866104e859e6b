import { type Movements, normalised, product } from './movements.ts';
import type { NameGroup } from './name-groups.ts';
import type { NamedColumn } from './role.ts';

export interface BehaviourOwner {
  readonly group: NameGroup;
  readonly role: 'defrost' | 'valve';
  readonly confidence: number;
  readonly because: string;
}

/** A state moves a circuit's air if this much of the air's movement goes with it. */
const leastCorrelation = 0.2;
/** And the next best circuit must follow it by no more than this share. */
const clearlyBetter = 0.7;
/** Defrosts come at most so often a day; valves switch more often. Common practice, no source. */
const mostDefrostsPerDay = 12;

/**
 * The circuit whose air stands high while a state is on (its defrost) or falls (its valve), for columns whose
 * name leads to no circuit; null where no circuit, or more than one, follows it.
 */
export function ownerByBehaviour(
  column: NamedColumn,
  groups: readonly NameGroup[],
  movements: Movements,
): BehaviourOwner | null {
  const { startsPerDay } = column.facts;
  const seldom = startsPerDay >= 0.3 && startsPerDay <= mostDefrostsPerDay;
  const role = column.role === 'other' ? (seldom ? 'defrost' : 'valve') : column.role;
  if (role !== 'defrost' && role !== 'valve') return null;
  const state = movements.quick(column.point);
  const effects = groups
    .map((group) => ({
      group,
      effect: role === 'defrost' ? risenWith(group, state, movements) : fallingWith(group, state, movements),
    }))
    .sort((a, b) => b.effect - a.effect);
  const [best, next] = effects;
  if (best === undefined || best.effect < leastCorrelation) return null;
  if (next !== undefined && next.effect > clearlyBetter * best.effect) return null;
  return {
    group: best.group,
    role,
    confidence: Math.min(0.85, 0.4 + best.effect),
    because: `the air of this circuit ${role === 'defrost' ? 'stands high' : 'falls'} while it is on`,
  };
}

function risenWith(group: NameGroup, state: Float64Array, movements: Movements): number {
  const levels = group.air.map(({ column }) => product(movements.quick(column.point), state));
  return levels.reduce((sum, level) => sum + level, 0) / levels.length;
}

function fallingWith(group: NameGroup, state: Float64Array, movements: Movements): number {
  const changes = new Float64Array(state.length);
  for (const { column } of group.air) {
    const level = movements.level(column.point);
    for (let index = 1; index + 1 < level.length; index++) {
      const change = level[index + 1]! - level[index - 1]!;
      if (!Number.isNaN(change)) changes[index] = changes[index]! + change;
    }
  }
  return -product(normalised(changes), state);
}
