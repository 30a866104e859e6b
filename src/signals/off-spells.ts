import type { Grid } from '../model/grid.ts';
import { samplesIn } from '../model/grid.ts';
import type { Circuit } from '../model/log.ts';
import type { Celsius, Kelvin, Minutes } from '../units/quantities.ts';
import type { Stretch } from './defrost/stretch.ts';
import type { Spells } from './types.ts';

/** With the valve logged: shut for an hour outside any defrost while the air climbs by 4 K. */
const shutMinutes: Minutes = 60;
const shutRise: Kelvin = 4;
/** Without: 8 K above usual and above 10 °C for three hours, which no case that is fed reaches. */
const warmMinutes: Minutes = 180;
const warmRise: Kelvin = 8;
const warmAir: Celsius = 10;
/** A valve that is never open in the log is a column that is not connected. */
const leastOpenShare = 0.01;

/** Stretches in which the circuit was shut off, by behaviour. `usual` gives its usual air; few circuits need it. */
export function offSpells(
  circuit: Circuit,
  valveSpells: Spells,
  air: Float64Array,
  usual: () => Celsius,
  defrosts: readonly Stretch[],
  grid: Grid,
): Stretch[] {
  if (circuit.valve !== null) {
    if (samplesOpen(valveSpells) >= leastOpenShare * grid.count) {
      const shut = longShut(valveSpells, defrosts, samplesIn(grid, shutMinutes));
      const level = shut.length === 0 ? Number.NaN : usual();
      return shut.filter((spell) => isWarm(spell, air, level, defrosts));
    }
  }
  const shortest = samplesIn(grid, warmMinutes);
  if (warmStretches(air, warmAir, shortest).length === 0) return [];
  return warmStretches(air, Math.max(usual() + warmRise, warmAir), shortest);
}

/** Spells of `shortest` samples or more, defrosts not counted. */
function longShut(
  { count, from, to, on }: Spells,
  defrosts: readonly Stretch[],
  shortest: number,
): Stretch[] {
  const long: Stretch[] = [];
  for (let k = 0; k < count; k++) {
    const shut = to[k]! - from[k]!;
    if (on[k] === 1 || shut < shortest) continue;
    const spell = { from: from[k]!, to: to[k]! };
    if (shut - defrostingIn(spell, defrosts) >= shortest) long.push(spell);
  }
  return long;
}

function samplesOpen({ count, from, to, on }: Spells): number {
  let open = 0;
  for (let k = 0; k < count; k++) if (on[k] === 1) open += to[k]! - from[k]!;
  return open;
}

function defrostingIn({ from, to }: Stretch, defrosts: readonly Stretch[]): number {
  let samples = 0;
  for (const defrost of defrosts)
    samples += Math.max(0, Math.min(to, defrost.to) - Math.max(from, defrost.from));
  return samples;
}

function isWarm(spell: Stretch, air: Float64Array, usual: Celsius, defrosts: readonly Stretch[]): boolean {
  const { from, to } = spell;
  const defrosting = defrostingIn(spell, defrosts);
  let warm = 0;
  for (let i = from; i < to; i++) if (air[i]! > usual + shutRise) warm++;
  return warm - defrosting > 0.25 * (to - from - defrosting);
}

function warmStretches(air: Float64Array, limit: Celsius, shortest: number): Stretch[] {
  const stretches: Stretch[] = [];
  let from = -1;
  for (let i = 0; i <= air.length; i++) {
    const warm = i < air.length && air[i]! > limit;
    if (warm && from < 0) from = i;
    if (!warm && from >= 0) {
      if (i - from >= shortest) stretches.push({ from, to: i });
      from = -1;
    }
  }
  return stretches;
}
