import type { Finding } from '../../src/model/finding.ts';
import type { RepairCheck } from '../../src/repair-check/check-repair.ts';
import { checkRepair } from '../../src/repair-check/check-repair.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { gridOf, handMadeLog, startOfHistory } from '../support/hand-made-log.ts';
import { noise, type SimpleCase, simpleCase } from '../support/simple-case.ts';

const dayMs = 86_400_000;

/** How large the fault is, as a share of its full size, at a time in days. */
export type Course = (day: number) => number;

export interface Repair {
  readonly fault: 'warm-end' | 'weak-cooling' | 'lying-probe';
  readonly course: Course;
  readonly servicedDay: number;
  readonly days: number;
  readonly seed?: number;
  readonly findings?: readonly Finding[];
  readonly stepMinutes?: number;
}

/** The fault creeps up over six days from day 6 on, then does what `after` says from the visit on. */
export const creepUntil =
  (servicedDay: number, after: Course): Course =>
  (day) =>
    day < servicedDay ? Math.min(1, Math.max(0, (day - 6) / 6)) : after(day);

function disturbed({ fault, course, seed = 1 }: Repair): SimpleCase {
  const share = (minute: number) => course(minute / 1440);
  const weather = dailyWeather(seed);
  const load = (minute: number) => 0.008 * weather(minute);
  switch (fault) {
    case 'warm-end':
      return { load, cooling: (minute, probe) => (probe === 0 ? 0.35 * (1 - 0.3 * share(minute)) : 0.35) };
    case 'weak-cooling':
      return { load, cooling: (minute) => 0.35 * (1 - 0.65 * share(minute)) };
    case 'lying-probe':
      return { load, offset: (minute, probe) => (probe === 0 ? 3 * share(minute) : 0) };
  }
}

/** Days differ: a load that wanders from day to day, as humidity and trade do. */
function dailyWeather(seed: number): (minute: number) => number {
  const draw = noise(seed * 7919);
  const days: number[] = [];
  let level = 0;
  for (let day = 0; day < 60; day++) {
    level = 0.7 * level + 0.05 * draw();
    days.push(1 + level);
  }
  return (minute) => days[Math.floor(minute / 1440)]!;
}

export function repaired(repair: Repair): RepairCheck {
  const { servicedDay, days, findings = [], stepMinutes = 5, seed = 1 } = repair;
  const circuit = simpleCase(gridOf(days, stepMinutes), { ...disturbed(repair), seed });
  const log = handMadeLog({ days, stepMinutes, circuits: [circuit] });
  return checkRepair(computeSignals(log), findings, 'M01', startOfHistory + servicedDay * dayMs);
}
