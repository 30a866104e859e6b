import { median } from '../../maths/median.ts';
import type { Calendar, Grid } from '../../model/grid.ts';
import { dayAt, samplesIn, stepMinutes } from '../../model/grid.ts';
import type { Minutes } from '../../units/quantities.ts';
import { sampleAtMinute } from '../local-minutes.ts';
import { liftIn } from './lift.ts';
import type { RiseEvent } from './rise-events.ts';
import { plainRise, riseEvents } from './rise-events.ts';
import type { Slot } from './slots.ts';
import { recurringSlots } from './slots.ts';
import type { Stretch } from './stretch.ts';

/** A slot's defrost came when it lifted the air by this share of the usual lift. */
const seenShare = 0.4;

/** A recurring climb smaller than this share of the largest one is stocking, not a defrost. */
const weakShare = 0.5;

/**
 * Defrosts from the shape of the air, where nothing logs them: climbs that recur at the same time of day; single
 * ones when they look like these; failing that, climbs of one size at changing times on most days.
 */
export function defrostsFromShape(air: Float64Array, grid: Grid, calendar: Calendar): Stretch[] {
  const events = riseEvents(air, grid);
  const byStart = new Map(events.map((event) => [event.from, event]));
  const slots = strongSlots(recurringSlots([...byStart.keys()], grid, calendar), byStart);
  if (slots.length === 0) {
    const plain = events.filter((event) => event.rise >= plainRise);
    return areAlike(plain, calendar) ? plain : [];
  }
  const regular = slots.flatMap((slot) => slot.starts.map((start) => byStart.get(start)!));
  const usual = usualEvent(regular);
  const isRegular = new Set(regular);
  const single = events.filter((event) => !isRegular.has(event) && resembles(event, usual));
  const times = slots.map((slot) => ({ minute: slot.minute, minutes: usual.minutes * stepMinutes(grid) }));
  const further = bumpsOfEachDay(air, times, grid, calendar);
  return joined([...regular, ...single], further, samplesIn(grid, 30));
}

function strongSlots(slots: readonly Slot[], events: ReadonlyMap<number, RiseEvent>): Slot[] {
  const rises = slots.map((slot) => median(slot.starts.map((start) => events.get(start)!.rise)));
  const largest = Math.max(...rises);
  return slots.filter((_, i) => rises[i]! >= weakShare * largest);
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

/** For every day and time of day, the stretch there when the air is lifted in it as it usually is. */
function bumpsOfEachDay(
  air: Float64Array,
  times: readonly { readonly minute: Minutes; readonly minutes: Minutes }[],
  grid: Grid,
  calendar: Calendar,
): Stretch[] {
  return times.flatMap(({ minute, minutes }) => {
    const stretches = calendar.days.flatMap((day) => {
      const from = sampleAtMinute(grid, calendar, day, minute);
      return from === null ? [] : [{ from, to: Math.min(grid.count, from + samplesIn(grid, minutes)) }];
    });
    const lifts = stretches.map((stretch) => liftIn(air, stretch, grid));
    const usual = median(lifts);
    return stretches.filter((_, i) => usual > 0 && lifts[i]! >= seenShare * usual);
  });
}

/** Both lists in order of time; what overlaps or follows within half an hour of a main one is the same defrost. */
function joined(main: readonly Stretch[], further: readonly Stretch[], apart: number): Stretch[] {
  const fresh = further.filter(
    (one) => !main.some((other) => one.from < other.to + apart && other.from < one.to + apart),
  );
  return [...main, ...fresh].sort((a, b) => a.from - b.from);
}
