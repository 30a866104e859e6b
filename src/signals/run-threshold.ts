import { median } from '../maths/median.ts';
import type { Record } from '../model/record.ts';

/** A modulating valve or drive below this opening is shut. */
const shutFraction = 0.03;

/** Of the usual running level: below it a power or current reading is no running machine. */
const idleShare = 1 / 3;

/**
 * The value above which a run column says "running": one half for a status, just above nothing for a fraction,
 * and for power, current or speed a third of the usual running level. The running level is the median of what
 * lies above the mean, so that neither idle time nor start-up spikes set it.
 */
export function runThreshold(record: Record): number {
  if (record.quantity === 'status') return 0.5;
  if (record.quantity === 'fraction') return shutFraction;
  let sum = 0;
  let known = 0;
  for (const value of record.values) {
    if (Number.isNaN(value)) continue;
    sum += value;
    known++;
  }
  const mean = sum / known;
  return idleShare * median(record.values.filter((value) => value >= mean));
}
