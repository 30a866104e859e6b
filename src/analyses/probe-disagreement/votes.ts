import { changeInDays, type DayChange } from './change-in-days.ts';
import type { PairDifference } from './pair-differences.ts';
import { settings } from './settings.ts';

/** A probe that most of its pairs accuse. */
export interface Accused {
  readonly probe: number;
  /** Share of its pairs (with probes not accused before it) that changed, 0 to 1. */
  readonly votes: number;
}

interface ChangedPair {
  readonly first: number;
  readonly second: number;
  readonly change: DayChange | null;
}

/**
 * Names the probes that changed against their neighbours: every pair is tested, every changed pair votes for
 * both of its ends, and the end with most votes is taken out until no probe has enough of them (pairwise
 * homogenisation after Menne & Williams 2009, J. Climate 22:1700). A healthy probe beside one bad neighbour
 * keeps a minority of changed pairs.
 */
export function accusedProbes(pairs: readonly PairDifference[], probes: readonly number[]): Accused[] {
  let open: ChangedPair[] = pairs.map(({ first, second, days }) => ({
    first,
    second,
    change: changeInDays(days),
  }));
  const accused: Accused[] = [];
  while (accused.length < probes.length - 1) {
    const next = mostAccused(open, probes);
    if (next === null) break;
    accused.push(next);
    open = open.filter((pair) => pair.first !== next.probe && pair.second !== next.probe);
  }
  return accused;
}

function mostAccused(pairs: readonly ChangedPair[], probes: readonly number[]): Accused | null {
  let best: { probe: number; votes: number; weight: number } | null = null;
  for (const probe of probes) {
    const own = pairs.filter((pair) => pair.first === probe || pair.second === probe);
    if (own.length === 0) continue;
    let up = 0;
    let down = 0;
    let weight = 0;
    for (const pair of own) {
      if (pair.change === null) continue;
      const rise = (pair.change.after - pair.change.before) * (pair.first === probe ? 1 : -1);
      if (rise > 0) up++;
      else down++;
      weight += rise;
    }
    const votes = Math.max(up, down) / own.length;
    if (votes < settings.voteShare.value) continue;
    // Of two probes the one that went warm is written down: the louder reading, not the proven one.
    const strength = probes.length === 2 ? weight : Math.abs(weight);
    if (best === null || votes > best.votes || (votes === best.votes && strength > best.weight)) {
      best = { probe, votes, weight: strength };
    }
  }
  return best === null ? null : { probe: best.probe, votes: best.votes };
}
