import type { Target } from '../model/record.ts';
import { targetAt } from '../model/record.ts';
import type { Kelvin } from '../units/quantities.ts';
import { BinnedValues } from './binned-values.ts';
import { Phase } from './types.ts';

/** Of the log's first third; a median needs no more than some thousand samples. */
const samplesWanted = 4000;

/**
 * How far a probe usually stands above the set point in settled air (where none is known: its usual air), from the
 * first third of the log. NaN when there is no settled air in it.
 */
export function usualAbove(values: Float64Array, setPoint: Target | null, phase: Uint8Array): Kelvin {
  const third = Math.ceil(values.length / 3);
  const stride = Math.max(1, Math.floor(third / samplesWanted));
  const bins = new BinnedValues(0.05, -90, 90);
  for (let i = 0; i < third; i += stride) {
    if (phase[i] !== Phase.cooling) continue;
    const above = values[i]! - (setPoint === null ? 0 : targetAt(setPoint, i));
    if (!Number.isNaN(above)) bins.add(above);
  }
  return bins.quantile(0.5);
}
