import { median } from '../../maths/median.ts';
import type { Grid } from '../../model/grid.ts';
import { samplesIn, stepMinutes } from '../../model/grid.ts';
import type { Minutes } from '../../units/quantities.ts';
import { spellAt, spellsOf } from '../spells.ts';
import type { Spell } from '../types.ts';
import type { Stretch } from './stretch.ts';

/** Two spells closer than this are one defrost whose status flickered. */
const flickerMinutes: Minutes = 4;
/** No defrost is shorter; at a coarser logging one sample is enough. */
const shortestMinutes: Minutes = 3;
/** No defrost lasts longer: a status that stays on beyond it is stuck, or the circuit was put off. */
const longestMinutes: Minutes = 240;

export interface StatusDefrosts {
  readonly windows: readonly Stretch[];
  /** Stretches in which the status tells nothing: missing, or on for hours. */
  readonly silent: readonly Stretch[];
}

/**
 * Defrosts from the status column. Which of its two states is the defrost is decided by behaviour: the rare one,
 * unless the air climbs in the common one.
 */
export function defrostsFromStatus(status: Float64Array, air: Float64Array, grid: Grid): StatusDefrosts {
  const columns = spellsOf(status);
  const seen = Array.from({ length: columns.count }, (_, k) => spellAt(columns, k));
  const spells = joinFlicker(seen, grid);
  const on = isInverted(spells, air, grid) ? spells.map((spell) => ({ ...spell, on: !spell.on })) : spells;
  const shortest = shortestMinutes / stepMinutes(grid);
  const longest = longestMinutes / stepMinutes(grid);
  const windows = on.filter((s) => s.on && s.to - s.from >= shortest && s.to - s.from <= longest);
  const stuck = on.filter((s) => s.on && s.to - s.from > longest);
  return { windows, silent: [...missingStretches(seen, status.length, samplesIn(grid, 60)), ...stuck] };
}

function joinFlicker(spells: readonly Spell[], grid: Grid): Spell[] {
  const joined: Spell[] = [];
  for (let i = 0; i < spells.length; i++) {
    const spell = spells[i]!;
    const last = joined.at(-1);
    const next = spells[i + 1];
    const minutes = (spell.to - spell.from) * stepMinutes(grid);
    const between = last?.on && next?.on === true && last.to === spell.from;
    if (!spell.on && between && spell.whole && minutes <= flickerMinutes) {
      joined[joined.length - 1] = { ...last, to: next.to, whole: next.whole };
      i++;
    } else joined.push(spell);
  }
  return joined;
}

/** True when "1" stands for cooling: it holds most of the time and the air climbs whenever it is 0. */
function isInverted(spells: readonly Spell[], air: Float64Array, grid: Grid): boolean {
  const samples = (on: boolean) => spells.reduce((sum, s) => sum + (s.on === on ? s.to - s.from : 0), 0);
  if (samples(true) <= samples(false)) return false;
  const off = spells.filter((s) => !s.on && s.whole && s.to - s.from <= longestMinutes / stepMinutes(grid));
  return off.length >= 2 && median(off.map((s) => climb(air, s))) > 1;
}

/** How far the air climbs over a stretch: its highest value in the later half less its value at the start. */
function climb(air: Float64Array, { from, to }: Stretch): number {
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = (from + to) >> 1; i < Math.min(air.length, to + 1); i++) highest = Math.max(highest, air[i]!);
  return highest - air[from]!;
}

/** What lies between the spells of a status of so many samples, where it is `shortest` or more. */
function missingStretches(spells: readonly Spell[], count: number, shortest: number): Stretch[] {
  const missing: Stretch[] = [];
  let known = 0;
  for (const { from, to } of spells) {
    if (from - known >= shortest) missing.push({ from: known, to: from });
    known = to;
  }
  if (count - known >= shortest) missing.push({ from: known, to: count });
  return missing;
}
