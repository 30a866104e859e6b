import { median } from '../maths/median.ts';
import { medianAbsoluteDeviation } from '../maths/median-absolute-deviation.ts';
import type { Calendar, Grid } from '../model/grid.ts';
import { samplesIn } from '../model/grid.ts';
import type { Record } from '../model/record.ts';
import type { Celsius, Kelvin, Minutes } from '../units/quantities.ts';
import type { ProbeDays, SetPointStep } from './types.ts';
import { Phase } from './types.ts';

/** A logged set point has stepped when it stands this far from its last value for this long. */
const columnStep: Kelvin = 0.25;
const columnMinutes: Minutes = 60;
/** Without a column: all probes move by at least this, alike, from one day to the next. */
const levelStep: Kelvin = 0.8;
const reachDays = 3;
/** The circuit goes on cycling as before: its swing stays within these ratios, its valve still closes … */
const swingRatios = [0.6, 1.6] as const;
const fullDuty = 0.95;
/** … and does not answer the wrong way: warmer air asks for less feeding, colder air for more; weather moves it by this much. */
const dutySlack = 0.05;

/** Steps of a logged set point. */
export function columnSteps(record: Record, grid: Grid): SetPointStep[] {
  const steps: SetPointStep[] = [];
  const lasting = samplesIn(grid, columnMinutes);
  let level = Number.NaN;
  let since = -1;
  for (let i = 0; i < record.values.length; i++) {
    const value = record.values[i]!;
    if (Number.isNaN(value)) continue;
    if (Number.isNaN(level)) level = value;
    if (Math.abs(value - level) < columnStep) {
      since = -1;
      continue;
    }
    if (since < 0 || Math.abs(value - record.values[since]!) >= columnStep) since = i;
    if (i - since >= lasting) {
      steps.push({ at: since, from: level, to: value, source: 'column' });
      level = value;
      since = -1;
    }
  }
  return steps;
}

/**
 * Steps of a set point that nothing logs: from one day to the next the daily medians of all probes (two or more)
 * move alike, while the circuit goes on cycling.
 */
export function levelSteps(
  probes: readonly ProbeDays[],
  duty: Float64Array,
  mean: Float64Array,
  phase: Uint8Array,
  calendar: Calendar,
): SetPointStep[] {
  if (probes.length < 2) return [];
  const shifts = calendar.days.map((_, day) => commonShift(probes, duty, day));
  const steps: SetPointStep[] = [];
  shifts.forEach((shift, day) => {
    const around = shifts.slice(Math.max(0, day - reachDays), day + reachDays + 1);
    const isLargest = around.every((other) => Math.abs(other) <= Math.abs(shift));
    const isFirst = shifts.slice(Math.max(0, day - reachDays), day).every((other) => other !== shift);
    if (shift === 0 || !isLargest || !isFirst) return;
    const from = median(probes.map((probe) => medianOfDays(probe.median, day - reachDays, day)));
    const opening = calendar.days[day - 1]!.from;
    const closing = calendar.days[Math.min(calendar.days.length, day + 2) - 1]!.to;
    const at = crossing(mean, phase, opening, closing, from + shift / 2, Math.sign(shift));
    steps.push({ at, from, to: from + shift, source: 'level' });
  });
  return steps;
}

/** The shift of all probes across `day`, 0 when they do not share one. */
function commonShift(probes: readonly ProbeDays[], duty: Float64Array, day: number): Kelvin {
  const shifts = probes.map(
    ({ median: level }) =>
      medianOfDays(level, day + 1, day + 1 + reachDays) - medianOfDays(level, day - reachDays, day),
  );
  const shift = shifts.reduce((sum, one) => sum + one, 0) / shifts.length;
  const unlikeness = Math.max(...shifts) - Math.min(...shifts);
  if (!(Math.abs(shift) >= levelStep) || unlikeness > 0.35 * Math.abs(shift) + 0.2) return 0;
  const isAbrupt = probes.every(({ median: level }) => {
    const jump = level[day + 1]! - level[day - 1]!;
    const scatter = medianAbsoluteDeviation(daysAround(level, day));
    return Math.abs(jump) >= 0.75 * Math.abs(shift) && Math.abs(shift) >= 4 * scatter;
  });
  return isAbrupt && goesOnCycling(probes, duty, day, shift) ? shift : 0;
}

function daysAround(level: Float64Array, day: number): number[] {
  const before = medianOfDays(level, day - reachDays, day);
  const after = medianOfDays(level, day + 1, day + 1 + reachDays);
  const residuals: number[] = [];
  for (let d = Math.max(0, day - reachDays); d < Math.min(level.length, day + 1 + reachDays); d++)
    if (d !== day) residuals.push(level[d]! - (d < day ? before : after));
  return residuals;
}

function goesOnCycling(
  probes: readonly ProbeDays[],
  duty: Float64Array,
  day: number,
  shift: Kelvin,
): boolean {
  const dutyAfter = medianOfDays(duty, day + 1, day + 1 + reachDays);
  if (dutyAfter > fullDuty) return false;
  if (dutyAfter <= fullDuty) {
    const more = dutyAfter - medianOfDays(duty, day - reachDays, day);
    return !(Math.sign(shift) * more > dutySlack);
  }
  const before = median(probes.map((probe) => medianOfDays(probe.swing, day - reachDays, day)));
  const after = median(probes.map((probe) => medianOfDays(probe.swing, day + 1, day + 1 + reachDays)));
  const ratio = after / before;
  return before >= 0.5 && ratio >= swingRatios[0] && ratio <= swingRatios[1];
}

function medianOfDays(days: Float64Array, from: number, to: number): number {
  if (from < 0 || to > days.length) return Number.NaN;
  return median(days.subarray(from, to));
}

/** The settled sample that best parts the stretch into one side below and one above `middle`. */
function crossing(
  mean: Float64Array,
  phase: Uint8Array,
  from: number,
  to: number,
  middle: Celsius,
  direction: number,
): number {
  let sum = 0;
  let least = 0;
  let at = from;
  for (let i = from; i < to; i++) {
    if (phase[i] !== Phase.cooling || Number.isNaN(mean[i]!)) continue;
    sum += direction * (mean[i]! - middle);
    if (sum < least) {
      least = sum;
      at = i + 1;
    }
  }
  return at;
}
