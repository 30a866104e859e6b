import { median } from '../../maths/median.ts';
import type { Calendar, Grid } from '../../model/grid.ts';
import { dayAt, samplesIn, stepMinutes } from '../../model/grid.ts';
import type { Kelvin, Minutes } from '../../units/quantities.ts';
import { minutesBetween, sampleAtMinute } from '../local-minutes.ts';
import { liftIn } from './lift.ts';
import type { RiseEvent } from './rise-events.ts';
import { plainRise, riseEvents } from './rise-events.ts';
import type { Slot } from './slots.ts';
import { recurringSlots, slotToleranceMinutes } from './slots.ts';
import type { Stretch } from './stretch.ts';

/** A slot's defrost came when it lifted the air by this share of the usual lift. */
const seenShare = 0.4;

/** A slot that climbs, or lifts the air, by less than this share of the largest one is stocking, not a defrost. */
const weakShare = 0.5;

/**
 * Defrosts from the shape of the air, where nothing logs them: climbs that recur at the same time of day; single
 * ones when they look like these; failing that, climbs of one size at changing times on most days.
 */
export function defrostsFromShape(air: Float64Array, grid: Grid, calendar: Calendar): Stretch[] {
  const events = riseEvents(air, grid);
  const byStart = new Map(events.map((event) => [event.from, event]));
  const strong = strongSlots(recurringSlots([...byStart.keys()], grid, calendar), byStart, calendar);
  const { slots, regular } = withTrueFeet(strong, byStart, grid);
  if (slots.length === 0) {
    const plain = events.filter((event) => event.rise >= plainRise);
    return areAlike(plain, calendar) ? plain : [];
  }
  const usual = usualEvent(regular);
  const isRegular = new Set(strong.flatMap((slot) => slot.starts.map((start) => byStart.get(start)!)));
  const single = events.filter((event) => !isRegular.has(event) && resembles(event, usual));
  const further = bumpsOfEachDay(air, slots, usual.minutes * stepMinutes(grid), grid, calendar);
  const apart = samplesIn(grid, 30);
  return joined(withoutEchoes([...regular, ...single], apart), further, apart);
}

/** Days without another climb at a time of day, before and after, by which a weak one there stands alone. */
const idleDays = 2;

function strongSlots(
  slots: readonly Slot[],
  events: ReadonlyMap<number, RiseEvent>,
  calendar: Calendar,
): Slot[] {
  const rises = slots.map((slot) => median(slot.starts.map((start) => events.get(start)!.rise)));
  const largest = Math.max(...rises);
  return slots.flatMap(({ minute, starts }, i) =>
    rises[i]! >= weakShare * largest
      ? [{ minute, starts: withoutDoors(starts, events, seenShare * rises[i]!, calendar) }]
      : [],
  );
}

/**
 * Without climbs far smaller than is usual at that time of day that stand alone: a door that opened at a time which the
 * schedule has left. A coil that ices climbs ever less, but again and again.
 */
function withoutDoors(
  starts: readonly number[],
  events: ReadonlyMap<number, RiseEvent>,
  plain: Kelvin,
  calendar: Calendar,
): number[] {
  const inOrder = [...starts].sort((a, b) => a - b);
  const dayOf = (at: number): number => dayAt(calendar, inOrder[at]!);
  const isAlone = (at: number): boolean =>
    (at === 0 || dayOf(at) - dayOf(at - 1) > idleDays) &&
    (at === inOrder.length - 1 || dayOf(at + 1) - dayOf(at) > idleDays);
  return inOrder.filter((start, at) => events.get(start)!.rise >= plain || !isAlone(at));
}

/**
 * A climb whose foot is found in the valve's cycle before it seems to begin earlier than it did, and a few such make a
 * time of day of their own. Where it ends when a fuller slot ends, it began with that one.
 */
function withTrueFeet(slots: readonly Slot[], events: ReadonlyMap<number, RiseEvent>, grid: Grid) {
  const minutesOf = ({ starts }: Slot): Minutes =>
    usualEvent(starts.map((start) => events.get(start)!)).minutes * stepMinutes(grid);
  const fullerOf = (slot: Slot): Slot | undefined =>
    slots.find((other) => {
      const later = minutesBetween(slot.minute, other.minute);
      const endsLater = later + minutesOf(other) - minutesOf(slot);
      const near = Math.min(slotToleranceMinutes, minutesOf(other));
      return other.starts.length > slot.starts.length && later > 0 && Math.abs(endsLater) <= near;
    });
  const kept: Slot[] = [];
  const regular: RiseEvent[] = [];
  for (const slot of slots) {
    const fuller = fullerOf(slot);
    if (fuller === undefined) kept.push(slot);
    const later = fuller === undefined ? 0 : samplesIn(grid, minutesBetween(slot.minute, fuller.minute));
    for (const start of slot.starts) {
      const event = events.get(start)!;
      regular.push({ ...event, from: Math.min(start + later, event.to - 1) });
    }
  }
  return { slots: kept, regular };
}

interface UsualEvent {
  readonly rise: number;
  readonly minutes: number;
}

function usualEvent(events: readonly RiseEvent[]): UsualEvent {
  return {
    rise: median(events.map((event) => event.rise)),
    minutes: median(events.map((event) => event.to - event.from)),
  };
}

function resembles(event: RiseEvent, usual: UsualEvent): boolean {
  const rise = event.rise / usual.rise;
  const length = (event.to - event.from) / usual.minutes;
  return event.rise >= plainRise && rise > 0.6 && rise < 1.6 && length > 0.5 && length < 1.6;
}

/** Climbs of one size on most days are defrosts on demand; climbs of any size are doors and loads. */
function areAlike(events: readonly RiseEvent[], calendar: Calendar): boolean {
  const days = new Set(events.map((event) => dayAt(calendar, event.from)));
  if (days.size < Math.max(3, 0.6 * calendar.days.length)) return false;
  const usual = usualEvent(events);
  return events.filter((event) => resembles(event, usual)).length >= 0.8 * events.length;
}

/**
 * For every day and slot, the stretch there when the air is lifted in it as it usually is on the days on which it
 * climbed. A slot that hardly lifts the air then, beside the largest, tells nothing this way.
 */
function bumpsOfEachDay(
  air: Float64Array,
  slots: readonly Slot[],
  minutes: Minutes,
  grid: Grid,
  calendar: Calendar,
): Stretch[] {
  const lifted = slots.map(({ minute, starts }) => {
    const stretches = calendar.days.flatMap((day) => {
      const from = sampleAtMinute(grid, calendar, day, minute);
      return from === null ? [] : [{ from, to: Math.min(grid.count, from + samplesIn(grid, minutes)) }];
    });
    const lifts = stretches.map((stretch) => liftIn(air, stretch, grid));
    const used = new Set(starts.map((start) => dayAt(calendar, start)));
    const isUsed = ({ from }: Stretch) => used.has(dayAt(calendar, from));
    return { stretches, lifts, usual: median(lifts.filter((_, i) => isUsed(stretches[i]!))) };
  });
  const largest = Math.max(...lifted.map(({ usual }) => usual));
  return lifted
    .filter(({ usual }) => usual > 0 && usual >= weakShare * largest)
    .flatMap(({ stretches, lifts, usual }) => stretches.filter((_, i) => lifts[i]! >= seenShare * usual));
}

/** Without the small climbs that follow within half an hour of a plain one: the valve's cycle on the way back. */
function withoutEchoes(climbs: readonly RiseEvent[], apart: number): RiseEvent[] {
  return climbs.filter(
    (one) =>
      !climbs.some(
        (other) => one.rise < seenShare * other.rise && one.from >= other.from && one.from < other.to + apart,
      ),
  );
}

/** Both lists in order of time; what overlaps or follows within half an hour of a main one is the same defrost. */
function joined(main: readonly Stretch[], further: readonly Stretch[], apart: number): Stretch[] {
  const fresh = further.filter(
    (one) => !main.some((other) => one.from < other.to + apart && other.from < one.to + apart),
  );
  return [...main, ...fresh].sort((a, b) => a.from - b.from);
}
