import type { Kelvin } from '../units/quantities.ts';
import { isDecided, type Judgement } from './judgement.ts';
import { featuresOf, type Trouble } from './trouble.ts';

/** Farther from its neighbours before than the places of a healthy case stand from each other (±1 °F), K … */
const stoodApart: Kelvin = 1;
/** … and since no farther than they do, the error of both levels in it, and plainly nearer than before. */
const standsWith: Kelvin = 0.7;
const leftShare = 0.6;

/**
 * A probe that lied, and from one moment on stands with its neighbours: somebody replaced it or set it right. Common
 * practice, no source. Real warming of a place that always stood colder looks the same in size, so only a lie counts.
 */
export function isSetRight(trouble: Trouble, judgement: Judgement): boolean {
  if (trouble.scope !== 'one-probe' || trouble.lead.shape !== 'step') return false;
  if (judgement.origin !== 'probe' || !isDecided(judgement)) return false;
  const { offsetBefore = 0, offsetNow = Number.NaN } = featuresOf(trouble);
  return (
    Math.abs(offsetBefore) >= stoodApart &&
    Math.abs(offsetNow) <= Math.min(standsWith, leftShare * Math.abs(offsetBefore))
  );
}
