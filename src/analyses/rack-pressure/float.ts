import { mean } from '../../maths/mean.ts';
import { median } from '../../maths/median.ts';
import { quantiles } from '../../maths/quantile.ts';
import type { Evidence } from '../../model/evidence.ts';
import { dayAt, samplesIn, timeAt } from '../../model/grid.ts';
import type { Log } from '../../model/log.ts';
import type { GroupSignals, Signals } from '../../signals/types.ts';
import { measure } from '../evidence-parts.ts';
import { evidenceOf } from './evidence.ts';
import { settings } from './settings.ts';
import { type Visit, visitHours } from './visits.ts';

/** A target that moves by less than this within a day, kPa, stands still. */
const plainMove = 2;
/** … and by less than this many steps of its logging, which may flicker between two of them. */
const plainSteps = 1.5;
/** One step is a move all the same where the target stood on either side of it for so many whole hours of the day. */
const hoursOnEach = 3;
/** This near to an end of the range in which it used to move, as a share of that range, it may be held there. */
const endShare = 0.1;
/** Valves that feed less by so much of the time ask for less than in the days when it moved. */
const lighterLoad = 0.05;
const fewestValves = 2;

/**
 * A logged target that used to move on most days and has stood still since: its float was switched off. At an end of
 * its own range it is only a remark, for a load that has no reserve, or one that needs nothing, holds it there; not so at its highest
 * while the valves feed as they did when it moved, for that is no light load. Where somebody
 * pulled the group down and put the target back, it did not float.
 */
export function floatStopped(group: GroupSignals, visits: readonly Visit[], signals: Signals): Evidence[] {
  const { log } = signals;
  const target = group.group.pressureSetPoint;
  if (target === null || typeof target === 'number') return [];
  const values = outside(visits, target.values, log);
  const least = Math.max(plainMove, plainSteps * target.resolution);
  const hour = samplesIn(log.grid, 60);
  const moved = log.calendar.days.map(
    ({ from, to }) => rangeOf(values, from, to) > least || standsTwice(values, from, to, hour),
  );
  const lastMove = moved.lastIndexOf(true);
  const before = moved.slice(0, lastMove + 1);
  const used = before.filter(Boolean).length;
  const from = stillSince(values, least / 2);
  const still = moved.length - 1 - Math.max(lastMove, dayAt(log.calendar, from));
  if (lastMove < 0 || used < 3 || used < 0.5 * before.length || still < settings.floatDays.value) return [];
  const [lowest, highest] = quantiles(values.subarray(0, from), [0.02, 0.98]) as [number, number];
  const margin = Math.max(target.resolution / 2, endShare * (highest - lowest));
  const now = lastKnown(values);
  const isHighest = now >= highest - margin;
  const isExplained = isHighest
    ? !feedsAsEver(group, log.calendar.days.length - still, signals)
    : now <= lowest + margin;
  return [
    evidenceOf(group, {
      shape: 'float-stopped',
      onset: timeAt(log.grid, from),
      end: null,
      certainty: isExplained ? 0.6 : 0.8,
      measures: [measure('daysStill', still, 'd')],
      features: { daysStill: still, note: isExplained ? 1 : 0 },
      points: [target.point, group.group.pressure?.point],
    }),
  ];
}

/** Whether the valves of the group feed on the days from `day` on, in the mean, as much of the time as before. */
function feedsAsEver(group: GroupSignals, day: number, { circuits }: Signals): boolean {
  const more = circuits
    .filter(({ circuit }) => group.members.includes(circuit.id))
    .map(({ duty }) => median(duty.subarray(day)) - median(duty.subarray(0, day)))
    .filter(Number.isFinite);
  return more.length >= Math.max(fewestValves, group.members.length / 2) && mean(more) > -lighterLoad;
}

/** Not known in the hours in and around visits. */
function outside(visits: readonly Visit[], values: Float64Array, log: Log): Float64Array {
  if (visits.length === 0) return values;
  const hour = samplesIn(log.grid, 60);
  const rest = values.slice();
  for (const at of visitHours(visits, log)) rest.fill(Number.NaN, at * hour, (at + 1) * hour);
  return rest;
}

/** Whether it stood at each of two values for some whole hours: it moved, by however little, and did not flicker. */
function standsTwice(values: Float64Array, from: number, to: number, hour: number): boolean {
  const hours = new Map<number, number>();
  for (let at = from; at + hour <= to; at += hour) {
    const value = values[at]!;
    if (rangeOf(values, at, at + hour) === 0) hours.set(value, (hours.get(value) ?? 0) + 1);
  }
  return [...hours.values()].filter((count) => count >= hoursOnEach).length >= 2;
}

/** The first sample from which on it has kept within `within` of its last value. */
function stillSince(values: Float64Array, within: number): number {
  const now = lastKnown(values);
  let from = values.length;
  while (from > 0 && !(Math.abs(values[from - 1]! - now) > within)) from--;
  return Math.min(from, values.length - 1);
}

function lastKnown(values: Float64Array): number {
  let last = values.length - 1;
  while (last > 0 && Number.isNaN(values[last]!)) last--;
  return values[last]!;
}

function rangeOf(values: Float64Array, from: number, to: number): number {
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = from; i < to; i++) {
    if (values[i]! < lowest) lowest = values[i]!;
    if (values[i]! > highest) highest = values[i]!;
  }
  return highest - lowest;
}
