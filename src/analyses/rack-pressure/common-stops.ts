import { stepMinutes } from '../../model/grid.ts';
import type { Log, SuctionGroup } from '../../model/log.ts';
import { targetAt } from '../../model/record.ts';
import { runThreshold } from '../../signals/run-threshold.ts';
import type { Kilopascal } from '../../units/quantities.ts';
import { settings } from './settings.ts';

/** Machines that a control takes off one by one do not all stop between two readings, a minute apart at most. */
const fewestRunning = 2;
const longestMinutes = 1;

/**
 * Samples at which two machines or more of the group ran and none does at the next reading, the suction well under its
 * target: its control takes them off one by one, a low-pressure cut-out all at once. Empty where fewer than two
 * are logged as running or not, or readings stand farther apart than a minute.
 */
export function commonStops(group: SuctionGroup, usual: Kilopascal, { grid }: Log): number[] {
  const { pressure, pressureSetPoint } = group;
  // A machine may be logged by its speed as well.
  const compressors = group.compressors.filter(({ quantity }) => quantity === 'status');
  if (pressure === null || compressors.length < fewestRunning || stepMinutes(grid) > longestMinutes)
    return [];
  const machines = compressors.map((record) => ({ record, threshold: runThreshold(record) }));
  const stops: number[] = [];
  let before = 0;
  for (let i = 0; i < grid.count; i++) {
    let running = 0;
    for (const { record, threshold } of machines) if (record.values[i]! > threshold) running++;
    if (running === 0 && before >= fewestRunning && isKnown(machines, i)) {
      const target = targetAt(pressureSetPoint, i);
      const limit = settings.cutOutDepth.value * (Number.isNaN(target) ? usual : target);
      if (Math.min(pressure.values[i - 1]!, pressure.values[i]!) < limit) stops.push(i);
    }
    before = running;
  }
  return stops;
}

function isKnown(machines: readonly { readonly record: { readonly values: Float64Array } }[], i: number) {
  return machines.every(({ record }) => !Number.isNaN(record.values[i]!));
}
