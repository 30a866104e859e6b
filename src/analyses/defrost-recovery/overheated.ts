import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import { samplesIn } from '../../model/grid.ts';
import type { CircuitSignals, DefrostWindow } from '../../signals/types.ts';
import { measure } from '../evidence-parts.ts';
import { levelChange } from './change.ts';
import { completeDefrosts } from './events.ts';
import { evidenceOf } from './evidence.ts';
import { settings } from './settings.ts';

/**
 * Where the coil is logged at its termination probe: defrosts that used to end at one coil temperature and now take longer
 * and go well past it were not ended by it. Those that take as long as ever are ended by the clock, and a coil that began
 * warmer ends warmer.
 */
export function overheated(signals: CircuitSignals): Evidence[] {
  const { circuit, log, defrostSource } = signals;
  if (defrostSource === 'none') return [];
  const windows = completeDefrosts(signals);
  const reach = samplesIn(log.grid, 3);
  return circuit.defrostTermination.flatMap((record) => {
    const ends = windows.map(({ to }) => highest(record.values, to - reach, to + reach));
    const change = levelChange(ends);
    if (change === null) return [];
    const rise = change.after - change.before;
    if (rise < Math.max(settings.overheated.value, 3 * change.scatter)) return [];
    if (defrostSource !== 'schedule' && !isLonger(windows, change.at)) return [];
    return [
      evidenceOf(signals, {
        shape: 'overheated',
        probe: null,
        from: windows[change.at]!.from,
        certainty: 0.85,
        measures: [
          measure('coilAtEnd', change.after, 'Cel'),
          measure('usualCoilAtEnd', change.before, 'Cel'),
        ],
        features: { terminationRise: rise },
      }),
    ];
  });
}

function isLonger(windows: readonly DefrostWindow[], at: number): boolean {
  const samples = (some: readonly DefrostWindow[]) => median(some.map(({ from, to }) => to - from));
  return samples(windows.slice(at)) > samples(windows.slice(0, at));
}

function highest(values: Float64Array, from: number, to: number): number {
  let highest = Number.NaN;
  for (let i = Math.max(0, from); i < Math.min(values.length, to); i++)
    if (!(values[i]! <= highest) && !Number.isNaN(values[i]!)) highest = values[i]!;
  return highest;
}
