import type { Evidence } from '../../model/evidence.ts';
import type { Grid, LocalDay } from '../../model/grid.ts';
import { dayAt, minuteOfDay, offsetAt, stepMinutes } from '../../model/grid.ts';
import { tradingMinutes } from '../../signals/clock-windows.ts';
import { minutesADay, minutesBetween } from '../../signals/local-minutes.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import type { Minutes } from '../../units/quantities.ts';
import { measure } from '../evidence-parts.ts';
import { evidenceOf } from './evidence.ts';
import { settings } from './settings.ts';

/** Two times of day nearer than this are the same one. */
const sameMinutes: Minutes = 20;

/** A slot is used before (or after) a day when a defrost is seen in it on this share of the days … */
const usedShare = 0.7;
/** … and not used on fewer than this: the air alone sometimes seems to show one where none was. */
const unusedShare = 0.55;
/** Of the old times of day, and of the new ones, this share must fit the shift, and as many must not last. */
const fittingShare = 0.75;

interface Move {
  /** Day of the calendar from which on the new times are used. */
  readonly day: number;
  readonly old: readonly Minutes[];
  readonly fresh: readonly Minutes[];
  readonly shift: Minutes;
  /** How much more of the days before (after) than of the others its times are used on, summed over them. */
  readonly contrast: number;
}

/**
 * The times of day at which the circuit defrosts have moved by one and the same amount: its schedule was edited, or the
 * clock that keeps it jumped. Times a spacing apart are alike, so a move is known up to that spacing only.
 */
export function movedDefrosts(signals: CircuitSignals): Evidence[] {
  const { log } = signals;
  const move = moveOf(signals);
  if (move === null) return [];
  const { old, shift } = move;
  const { before, after } = momentOf(signals, move);
  if (before === undefined || after === undefined || isClockChange(signals, before, after, shift)) return [];
  return [
    evidenceOf(signals, {
      kind: 'defrost-missed',
      shape: 'moved',
      probe: null,
      from: before,
      certainty: 0.75,
      measures: [measure('defrostsMovedBy', shift, 'min')],
      features: {
        shiftMinutes: shift,
        spacingMinutes: isEven(old) ? minutesADay / old.length : minutesADay,
        hoursUntilSeen: hoursBetween(before, after, log.grid),
        tradingBefore: inTrading(old),
        tradingNow: inTrading(move.fresh),
        clocksChanged: isOnChangeover(signals, before, after, shift) ? 1 : 0,
      },
    }),
  ];
}

/** The day that best parts old times of day from new ones, where a common shift leads from these to those. */
function moveOf({ slots, log }: CircuitSignals): Move | null {
  const { days } = log.calendar;
  const seenOn = slots.map(({ due, missed }) => {
    const isMissed = new Set(missed);
    return due.filter((sample) => !isMissed.has(sample)).map((sample) => dayAt(log.calendar, sample));
  });
  let best: Move | null = null;
  for (let day = settings.movedDays.value; day <= days.length - settings.movedDays.value; day++) {
    const old: Minutes[] = [];
    const fresh: Minutes[] = [];
    let contrast = 0;
    seenOn.forEach((seen, slot) => {
      const before = seen.filter((one) => one < day).length / day;
      const since = seen.filter((one) => one >= day).length / (days.length - day);
      const isOld = before >= usedShare && since <= unusedShare;
      const isFresh = before <= unusedShare && since >= usedShare;
      if (isOld) old.push(slots[slot]!.minute);
      if (isFresh) fresh.push(slots[slot]!.minute);
      if (isOld || isFresh) contrast += Math.abs(before - since);
    });
    if (old.length + fresh.length < Math.max(2, fittingShare * slots.length)) continue;
    if (best !== null && contrast <= best.contrast) continue;
    const shift = commonShift(old, fresh);
    if (shift !== null) best = { day, old, fresh, shift, contrast };
  }
  return best;
}

/**
 * The last defrost at an old time of day and the first at a new one, on either side of the moment that parts most of them
 * rightly: one by hand, or one that the air only seems to show, dates nothing.
 */
function momentOf({ defrosts, log }: CircuitSignals, { old, fresh }: Move) {
  const known = defrosts.flatMap(({ from }) => {
    const minute = minuteOfDay(log.grid, log.calendar, from);
    if (isNear(minute, old)) return [{ from, isFresh: false }];
    return isNear(minute, fresh) ? [{ from, isFresh: true }] : [];
  });
  let right = 0;
  let most = 0;
  let cut = 0;
  known.forEach(({ isFresh }, i) => {
    right += isFresh ? -1 : 1;
    if (right <= most) return;
    most = right;
    cut = i + 1;
  });
  return {
    before: known.slice(0, cut).findLast(({ isFresh }) => !isFresh)?.from,
    after: known.slice(cut).find(({ isFresh }) => isFresh)?.from,
  };
}

/** The smallest shift that takes enough of the old times of day to new ones and leaves few new ones over, or null. */
function commonShift(old: readonly Minutes[], fresh: readonly Minutes[]): Minutes | null {
  const least = fittingShare * Math.max(old.length, fresh.length);
  const fitting = old
    .flatMap((minute) => fresh.map((other) => minutesBetween(minute, other)))
    .filter((shift) => old.filter((minute) => isNear(minute + shift, fresh)).length >= Math.max(1, least));
  return fitting.length === 0 ? null : fitting.reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a));
}

/** How many of them fall in the trading day. */
function inTrading(minutes: readonly Minutes[]): number {
  const [opening, closing] = tradingMinutes;
  return minutes.filter((minute) => minute >= opening && minute < closing).length;
}

function isNear(minute: Minutes, others: readonly Minutes[]): boolean {
  return others.some((other) => Math.abs(minutesBetween(minute, other)) <= sameMinutes);
}

function isEven(minutes: readonly Minutes[]): boolean {
  const spacing = minutesADay / minutes.length;
  return minutes.every((minute) => isNear(minute + spacing, minutes));
}

/** The clocks of the place changed then by as much: the schedule stands still and has not moved. */
function isClockChange(
  { log: { calendar, grid } }: CircuitSignals,
  before: number,
  after: number,
  shift: Minutes,
): boolean {
  const day = minutesADay / stepMinutes(grid);
  const changed = offsetAt(calendar, after + day) - offsetAt(calendar, Math.max(0, before - day));
  return changed !== 0 && Math.abs(Math.abs(shift) - Math.abs(changed)) <= sameMinutes;
}

/**
 * One hour, about a Sunday on which clocks are changed somewhere, in a zone that is not known to change them: the
 * export was written by a clock that did.
 */
function isOnChangeover(
  { log: { calendar } }: CircuitSignals,
  before: number,
  after: number,
  shift: Minutes,
): boolean {
  if (calendar.offsets.length > 1 || Math.abs(Math.abs(shift) - 60) > sameMinutes / 2) return false;
  const first = Math.max(0, dayAt(calendar, before) - 1);
  return calendar.days.slice(first, dayAt(calendar, after) + 2).some(isChangeoverSunday);
}

/**
 * The last Sunday of March or October (Europe, Directive 2000/84/EC); the second of March or the first of November
 * (United States, 15 U.S.C. 260a); the first of April or October (southern Australia): from memory.
 */
function isChangeoverSunday({ date, weekday }: LocalDay): boolean {
  if (weekday !== 0) return false;
  const [, month, day] = date.split('-').map(Number) as [number, number, number];
  const nth = Math.ceil(day / 7);
  if (month === 3) return nth === 2 || day > 24;
  if (month === 10) return nth === 1 || day > 24;
  return (month === 4 || month === 11) && nth === 1;
}

function hoursBetween(from: number, to: number, grid: Grid): number {
  return ((to - from) * grid.stepMs) / 3_600_000;
}
