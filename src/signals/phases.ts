import type { Grid } from '../model/grid.ts';
import { samplesIn } from '../model/grid.ts';
import type { Minutes } from '../units/quantities.ts';
import type { Stretch } from './defrost/stretch.ts';
import { Phase } from './types.ts';

/**
 * Air is settled from an hour after a defrost on: the trade's own table of air temperatures is defined then (trade
 * field recommendations in a display-case maker's installation manual). After a stop it takes longer.
 */
const recoveryMinutes: Minutes = 60;
const restartMinutes: Minutes = 120;

/** One phase a sample: off, defrost, recovery or cooling. */
export function phasesOf(defrosts: readonly Stretch[], off: readonly Stretch[], grid: Grid): Uint8Array {
  const phase = new Uint8Array(grid.count).fill(Phase.cooling);
  for (const { to } of off) phase.fill(Phase.recovery, to, to + samplesIn(grid, restartMinutes));
  for (const { to } of defrosts) phase.fill(Phase.recovery, to, to + samplesIn(grid, recoveryMinutes));
  for (const { from, to } of defrosts) phase.fill(Phase.defrost, from, to);
  for (const { from, to } of off) phase.fill(Phase.off, from, to);
  return phase;
}

/** Whatever else it is, a sample at which no probe is known is unknown. */
export function markUnknown(phase: Uint8Array, air: Float64Array): void {
  for (let i = 0; i < phase.length; i++) if (Number.isNaN(air[i]!)) phase[i] = Phase.unknown;
}
