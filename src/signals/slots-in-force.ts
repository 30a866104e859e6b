import type { Calendar } from '../model/grid.ts';
import { dayAt } from '../model/grid.ts';
import type { Slot } from './defrost/slots.ts';

/** Slots that end or begin within so many days of each other do so together: the schedule was edited. */
const togetherDays = 2;
/** An edit puts a new slot in place of at least this share of those that end. */
const replacedShare = 0.5;

interface Life {
  readonly first: number;
  readonly last: number;
}

/**
 * Which slots are due on which days (positions in the calendar). A slot is due from its first use on, and goes on
 * being due after its last one, for that is how defrosts that stop look; unless others begin in its place: the
 * schedule was edited, or it stands still while the clocks change. Before its first use it is due only where the
 * circuit did not defrost at all. A planned slot that was never used is due on every day.
 */
export function slotsInForce(
  slots: readonly Slot[],
  calendar: Calendar,
): (slot: number, day: number) => boolean {
  const lives = slots.map(({ starts }) => lifeOf(starts, calendar));
  const known = lives.filter((life) => life !== null);
  const earliest = Math.min(...known.map(({ first }) => first));
  const replacedFrom = lives.map((life) => (life === null ? Number.POSITIVE_INFINITY : end(life, known)));
  return (slot, day) => {
    const life = lives[slot]!;
    if (life === null) return true;
    if (day < life.first) return life.first - earliest <= togetherDays && day < earliest;
    return day <= life.last || day < replacedFrom[slot]!;
  };
}

function lifeOf(starts: readonly number[], calendar: Calendar): Life | null {
  if (starts.length === 0) return null;
  const days = starts.map((start) => dayAt(calendar, start));
  return { first: Math.min(...days), last: Math.max(...days) };
}

/** The day from which enough others stand in the place of a slot and of those that end with it; infinite for none. */
function end({ last }: Life, lives: readonly Life[]): number {
  const ending = lives.filter((other) => Math.abs(other.last - last) <= togetherDays);
  const begun = lives
    .map(({ first }) => first)
    .filter((first) => first > 0 && first >= last - 1)
    .sort((a, b) => a - b);
  return begun[Math.ceil(replacedShare * ending.length) - 1] ?? Number.POSITIVE_INFINITY;
}
