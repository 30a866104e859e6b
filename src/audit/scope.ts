import type { Diagnosis, Finding } from '../model/finding.ts';
import { timeAt } from '../model/grid.ts';
import type { Log } from '../model/log.ts';
import type { CircuitSignals, GroupSignals, Signals } from '../signals/types.ts';
import { exportDifferenceFrom, exportPressureFrom, exportTemperatureFrom } from '../units/convert.ts';
import { localTimestamp } from '../units/display.ts';
import type { Month } from './month.ts';

/** What every table of an audit is made from. */
export interface MonthScope {
  readonly log: Log;
  readonly signals: Signals;
  readonly diagnosis: Diagnosis;
  readonly month: Month;
}

/** Calendar days of the month with their positions. */
export function monthDays({ log, month }: MonthScope) {
  return month.days.map((d) => ({ d, day: log.calendar.days[d]! }));
}

/** Findings that stood at some time in the month. */
export function findingsIn({ log, month, diagnosis }: MonthScope): readonly Finding[] {
  const from = timeAt(log.grid, month.range.from);
  const to = timeAt(log.grid, month.range.to);
  return diagnosis.findings.filter(({ onset, end }) => onset < to && (end === null || end >= from));
}

/** Whether a stretch of samples touches the month. */
export function touches({ month }: MonthScope, from: number, to: number): boolean {
  return from < month.range.to && to > month.range.from;
}

export function groupOf({ signals }: MonthScope, circuit: CircuitSignals): GroupSignals | null {
  return signals.groups.find(({ group }) => group.id === circuit.circuit.suctionGroup) ?? null;
}

export const temperatureCell = (celsius: number, { log }: MonthScope): number =>
  exportTemperatureFrom(celsius, log.units.temperature);
export const differenceCell = (kelvin: number, { log }: MonthScope): number =>
  exportDifferenceFrom(kelvin, log.units.temperature);
export const pressureCell = (kilopascal: number, { log }: MonthScope): number =>
  exportPressureFrom(kilopascal, log.units.pressure, log.atmosphere);
/** RFC 3339 with the site's offset. */
const written = new WeakMap<Log, Map<number, string | null>>();

/** Every probe of a circuit names the same starts and ends: each is written once. */
export function timeCell(sample: number, { log }: MonthScope): string | null {
  const times = written.get(log) ?? new Map<number, string | null>();
  written.set(log, times);
  const known = times.get(sample);
  if (known !== undefined) return known;
  const cell = localTimestamp(timeAt(log.grid, sample), log);
  times.set(sample, cell);
  return cell;
}
