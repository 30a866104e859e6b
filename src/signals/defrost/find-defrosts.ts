import type { Circuit, Log } from '../../model/log.ts';
import { runThreshold } from '../run-threshold.ts';
import type { CircuitSignals } from '../types.ts';
import { defrostsFromSchedule } from './from-schedule.ts';
import { defrostsFromShape } from './from-shape.ts';
import { defrostsFromStatus } from './from-status.ts';
import { boundByValve, startsOnTheClock } from './sharpen.ts';
import type { Stretch } from './stretch.ts';

export interface FoundDefrost extends Stretch {
  readonly source: 'status' | 'schedule' | 'shape';
}

export interface FoundDefrosts {
  readonly source: CircuitSignals['defrostSource'];
  readonly found: readonly FoundDefrost[];
}

/** A status that is silent for longer than this share of the log is not relied on. */
const silentShare = 0.5;
/** … nor is one that never shows a defrost in this many days while the air plainly does. */
const idleDays = 2;

/**
 * The circuit's defrosts: from its status where one is logged and speaks, else from the schedule of the site file
 * where the air follows it, else from the shape of the air. Where a status is silent for a while (missing, or
 * stuck on), the shape stands in for it.
 */
export function findDefrosts(circuit: Circuit, air: Float64Array, log: Log): FoundDefrosts {
  const { grid, calendar } = log;
  const status = circuit.defrost.status?.values ?? null;
  if (status !== null) {
    const { windows, silent } = defrostsFromStatus(status, air, grid);
    const silentSamples = silent.reduce((sum, stretch) => sum + stretch.to - stretch.from, 0);
    const shape = windows.length === 0 || silent.length > 0 ? byShape(circuit, air, log) : [];
    const idle = windows.length === 0 && shape.length >= idleDays && calendar.days.length >= idleDays;
    if (silentSamples < silentShare * grid.count && !idle) {
      const standIns = shape.filter((one) => silent.some((s) => one.from >= s.from && one.to <= s.to));
      return { source: 'status', found: inOrder(tagged(windows, 'status'), tagged(standIns, 'shape')) };
    }
  }
  const scheduled = defrostsFromSchedule(circuit.defrost, air, grid, calendar);
  if (scheduled !== null) return { source: 'schedule', found: tagged(scheduled, 'schedule') };
  const shaped = byShape(circuit, air, log);
  return { source: shaped.length > 0 ? 'shape' : 'none', found: tagged(shaped, 'shape') };
}

function byShape({ valve }: Circuit, air: Float64Array, { grid, calendar }: Log): Stretch[] {
  const found = defrostsFromShape(air, grid, calendar);
  const bound = valve === null ? found : boundByValve(found, valve.values, runThreshold(valve), grid);
  return startsOnTheClock(bound, grid, calendar);
}

function tagged(stretches: readonly Stretch[], source: FoundDefrost['source']): FoundDefrost[] {
  return stretches.map(({ from, to }) => ({ from, to, source }));
}

function inOrder(first: readonly FoundDefrost[], second: readonly FoundDefrost[]): FoundDefrost[] {
  return [...first, ...second].sort((a, b) => a.from - b.from);
}
