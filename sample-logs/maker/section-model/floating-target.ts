import type { Random } from '../random.ts';
import type { GroupEffects } from './effects.ts';

const everyMinutes = 10;

/**
 * A suction target that floats: high while the store is shut and the load is small, low in trading hours, with a slow
 * wander of the load. `advance` gives the kelvin above its lowest in this minute.
 */
export function createFloatingTarget(most: number, random: Random) {
  let wander = 0;
  let free = most / 2;
  let now = free;
  return {
    advance(minute: number, effects: GroupEffects): number {
      if (most === 0 || minute % everyMinutes !== 0) return now;
      const clock = ((minute % 1440) + 1440) % 1440;
      const quiet = clock < 390 || clock >= 1290 ? 1 : 0;
      wander = 0.985 * wander + 0.03 * random.normal();
      const goal = Math.min(1, Math.max(0, 0.15 + 0.7 * quiet + wander));
      free += (goal * most - free) / 12;
      now = effects.floatFixed ?? (effects.floatAtLowest ? Math.max(0, now - 0.1) : free);
      return now;
    },
  };
}
