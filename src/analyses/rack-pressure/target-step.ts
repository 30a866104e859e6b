import { clearRamp } from '../../maths/fit-ramp.ts';
import { median } from '../../maths/median.ts';
import { medianAbsoluteDeviation } from '../../maths/median-absolute-deviation.ts';
import { dayAt, samplesIn } from '../../model/grid.ts';
import type { Log } from '../../model/log.ts';
import type { CircuitSignals, GroupSignals } from '../../signals/types.ts';
import type { Kelvin, Kilopascal } from '../../units/quantities.ts';
import { hourlyMeans, hoursOfDay } from './hourly.ts';
import { runningIn } from './running.ts';
import { settings } from './settings.ts';
import type { SuctionHours } from './suction-hours.ts';

/** A suction target that went to another value and stands there. */
export interface TargetStep {
  /** Hour of the log. */
  readonly from: number;
  /** As saturated temperature, positive when it was raised. */
  readonly moved: Kelvin;
  /** Where the target, or with none logged the suction itself, stood and stands. */
  readonly before: Kilopascal;
  readonly now: Kilopascal;
  readonly fromColumn: boolean;
  /** Share of the circuits whose valves answered it (less feeding under a lower suction), and by how much the middle one did. */
  readonly answering: number;
  readonly dutyChange: number;
}

const dayHours = 24;
/** A target that moves by less than this still stands, K. */
const standing: Kelvin = 0.3;
/** Of the valves so many must answer where only the pressure tells, each by this much of the time. */
const answeringShare = 0.6;
const answer = 0.03;
const fewestValves = 2;
/** A pressure that is steered holds its new level as it held the old one: so many times its scatter, and K. */
const asSteady = 1.5;
const steadySlack: Kelvin = 0.15;
/** Within these hours on either side it must have gone this share of the way. */
const abruptHours = 6;
const abruptShare = 0.7;

/** The last step of the target that stands to the end of the log; null where there is none. */
export function targetStep(
  group: GroupSignals,
  members: readonly CircuitSignals[],
  hours: SuctionHours,
  log: Log,
): TargetStep | null {
  const target = group.group.pressureSetPoint;
  const isLogged = target !== null && typeof target !== 'number';
  return isLogged ? loggedStep(group, members, hours, log) : pressureStep(group, members, hours, log);
}

/** By its column: one value before it and one since, for `targetHours` each, and one that was not in force before. A float moves all the time. */
function loggedStep(
  group: GroupSignals,
  members: readonly CircuitSignals[],
  { targetMoved }: SuctionHours,
  log: Log,
): TargetStep | null {
  const long = settings.targetHours.value;
  const last = median(targetMoved.subarray(-dayHours));
  let from = targetMoved.length;
  while (from > 0 && !(Math.abs(targetMoved[from - 1]! - last) > standing)) from--;
  if (targetMoved.length - from < long || from <= long) return null;
  // The hour of the step itself is a mean of both.
  const until = from - 1;
  const earlier = targetMoved.subarray(until - long, until).filter((value) => !Number.isNaN(value));
  const first = median(earlier);
  if (earlier.length < long / 2 || earlier.some((value) => Math.abs(value - first) > standing)) return null;
  const wasThere = targetMoved.subarray(0, until).filter((value) => Math.abs(value - last) <= standing);
  if (!(Math.abs(last - first) >= settings.targetLeft.value) || wasThere.length >= dayHours) return null;
  const pressures = hourlyMeans(group.group.pressureSetPoint, log.grid);
  const at = Math.abs(targetMoved[until]! - first) > standing ? until : from;
  return {
    from: at,
    moved: last - first,
    before: median(pressures.subarray(until - long, until)),
    now: median(pressures.subarray(-dayHours)),
    fromColumn: true,
    ...answerOf(members, at, last - first, log),
  };
}

/**
 * By the pressure itself, where no target is logged: a step within hours that is held as steadily as before, and that
 * the circuits answer. Pressure that rises because machines fail looks the same: a rise is taken for one that was asked
 * for only where the machines are logged, run no more than before and are not all at work.
 */
function pressureStep(
  group: GroupSignals,
  members: readonly CircuitSignals[],
  { aboveTarget }: SuctionHours,
  log: Log,
): TargetStep | null {
  const days = Float64Array.from(log.calendar.days, (day) => {
    const { from, to } = hoursOfDay(day, log.grid);
    return median(aboveTarget.subarray(from, to));
  });
  const ramp = clearRamp([...days.keys()], days, {
    leastSize: settings.targetLeft.value,
    leastScales: 4,
    leastScale: 0.2,
    leastExplained: 0.7,
  });
  if (ramp === null || ramp.end - ramp.start > 2) return null;
  const moved = ramp.after - ramp.before;
  const from = hourOfStep(aboveTarget, ramp, log);
  const long = settings.targetHours.value;
  if (aboveTarget.length - from < long || from < long) return null;
  if (!isAbrupt(aboveTarget, from, ramp) || !isAsSteady(days, ramp)) return null;
  const answered = answerOf(members, from, moved, log);
  const isAsked =
    moved < 0 ? answered.answering >= answeringShare : machinesRest(group, from, aboveTarget.length, log);
  if (!isAsked) return null;
  const pressures = hourlyMeans(group.group.pressure, log.grid);
  return {
    from,
    moved,
    before: median(pressures.subarray(0, from)),
    now: median(pressures.subarray(from)),
    fromColumn: false,
    ...answered,
  };
}

type Levels = {
  readonly before: number;
  readonly after: number;
  readonly start: number;
  readonly end: number;
};

/** The hour that best parts the two levels. */
function hourOfStep(
  hours: Float64Array,
  { before, after, start, end }: Levels,
  { calendar, grid }: Log,
): number {
  const first = hoursOfDay(calendar.days[start]!, grid).from;
  const until = hoursOfDay(calendar.days[end]!, grid).to;
  let cost = 0;
  let least = 0;
  let at = first;
  for (let k = first; k < until; k++) {
    cost += Math.abs(hours[k]! - before) - Math.abs(hours[k]! - after) || 0;
    if (cost < least) {
      least = cost;
      at = k + 1;
    }
  }
  return at;
}

function isAbrupt(hours: Float64Array, from: number, { before, after }: Levels): boolean {
  const left = median(hours.subarray(Math.max(0, from - abruptHours), from));
  const right = median(hours.subarray(from, from + abruptHours));
  return (right - left) / (after - before) >= abruptShare;
}

function isAsSteady(days: Float64Array, { start, end }: Levels): boolean {
  const scatter = (part: Float64Array) =>
    medianAbsoluteDeviation(part.filter((value) => !Number.isNaN(value)));
  return scatter(days.subarray(end)) <= asSteady * scatter(days.subarray(0, start + 1)) + steadySlack;
}

/** Machines that are logged, of which none died, that run no more than before and seldom all at once. */
function machinesRest(group: GroupSignals, from: number, count: number, { grid }: Log): boolean {
  const hoursIn = (first: number, last: number) => Array.from({ length: last - first }, (_, k) => first + k);
  const before = runningIn(group, hoursIn(0, from), from, grid);
  const since = runningIn(group, hoursIn(from, count), from, grid);
  if (before === null || since === null || since.dead > 0) return false;
  return since.runningShare <= before.runningShare && since.allRunningShare < settings.allRunning.value / 2;
}

/** A lower suction cools a coil with less feeding, a higher one asks for more. */
function answerOf(members: readonly CircuitSignals[], from: number, moved: Kelvin, { calendar, grid }: Log) {
  const day = dayAt(calendar, from * samplesIn(grid, 60));
  const changes = members
    .map(({ duty }) => median(duty.subarray(day + 1)) - median(duty.subarray(0, day)))
    .filter(Number.isFinite);
  const answering = changes.filter((change) => Math.sign(moved) * change >= answer);
  return {
    answering: changes.length < fewestValves ? 0 : answering.length / changes.length,
    dutyChange: median(changes),
  };
}
