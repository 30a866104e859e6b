import { timeAt } from '../model/grid.ts';
import { minutesBetween } from '../signals/local-minutes.ts';
import type { CircuitSignals, DefrostSlot } from '../signals/types.ts';
import type { EpochMs, Minutes } from '../units/quantities.ts';

/** Times of day nearer than this are the same one. */
const sameMinutes: Minutes = 20;
/** Defrosts due since, with the record complete, that tell whether a time of day is still used. */
const fewestDue = 3;
/** A time of day is used where a defrost came this often … */
const usedShare = 0.7;
/** … and a circuit keeps its times where this share of them is used. */
const keptShare = 0.75;

/**
 * Whether the circuit has gone on defrosting at the times of day it had, where a clock that jumped by `shift` would have
 * moved it as well. Where the shift carries one of its times to another it cannot be told, and is not so.
 */
export function keepsTimes({ slots, log }: CircuitSignals, at: EpochMs, shift: Minutes): boolean {
  const isTime = (minute: Minutes) =>
    slots.some((slot) => Math.abs(minutesBetween(minute, slot.minute)) <= sameMinutes);
  if (slots.length === 0 || slots.some(({ minute }) => isTime(minute + shift))) return false;
  const isUsed = ({ due, missed }: DefrostSlot, when: (sample: number) => boolean) => {
    const known = due.filter(when);
    const came = known.length - missed.filter(when).length;
    return known.length >= fewestDue && came >= usedShare * known.length;
  };
  const isSince = (sample: number) => timeAt(log.grid, sample) > at;
  const kept = slots.filter((slot) => isUsed(slot, isSince) && isUsed(slot, (sample) => !isSince(sample)));
  return kept.length >= keptShare * slots.length;
}
