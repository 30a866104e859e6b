import { median } from '../maths/median.ts';
import type { Trouble } from './trouble.ts';

/** Days whose median recovery stands for that time. */
const days = 3;
/** A recovery that lengthens by as much is on its own way, min … */
const ownLengthening = 6;
/** … where that is more than this share of what it has lengthened by now. */
const ownShare = 1 / 3;

/**
 * Until `day` the air of the trouble's circuit came back after defrost about as it mostly had, and it
 * takes longer now.
 */
export function recoveredUntil(day: number, trouble: Trouble): boolean {
  const usual = minutesIn(trouble, 0, Math.max(days, day - days));
  const before = minutesIn(trouble, day - days, day);
  const now = minutesNow(trouble);
  return before - usual < Math.max(ownLengthening, ownShare * (now - usual)) && now > before;
}

/** As `recoveredUntil`, and what it takes longer it did from the first days on: it does not grow. */
export function lengthenedAtOnce(day: number, trouble: Trouble): boolean {
  return (
    recoveredUntil(day, trouble) &&
    minutesNow(trouble) - minutesIn(trouble, day + 1, day + 1 + days) < ownLengthening
  );
}

function minutesNow(trouble: Trouble): number {
  const all = trouble.circuit?.level.length ?? 0;
  return minutesIn(trouble, all - days, all);
}

/** Over its probes, the median minutes of recovery on days `from` to `to`; NaN where it is not known. */
function minutesIn({ circuit }: Trouble, from: number, to: number): number {
  if (circuit === null) return Number.NaN;
  return median(circuit.probes.map(({ recovery }) => median(recovery.subarray(Math.max(0, from), to))));
}
