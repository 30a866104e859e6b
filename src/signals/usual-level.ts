import type { Target } from '../model/record.ts';
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
  const above = new Float64Array(Math.ceil(third / stride));
  const count = everyNthAbove(values, setPoint, phase, third, stride, above);
  const bins = new BinnedValues(0.05, -90, 90);
  bins.addKnown(above, 0, count);
  return bins.quantile(0.5);
}

/** Writes what the cooling ones of every `stride`th sample until `to` stand above the set point to `above`, and says how many they are. */
function everyNthAbove(
  values: Float64Array,
  setPoint: Target | null,
  phase: Uint8Array,
  to: number,
  stride: number,
  above: Float64Array,
): number {
  const targets = setPoint === null || typeof setPoint === 'number' ? null : setPoint.values;
  const fixed = typeof setPoint === 'number' ? setPoint : 0;
  let count = 0;
  for (let i = 0; i < to; i += stride) {
    if (phase[i] !== Phase.cooling) continue;
    above[count++] = values[i]! - (targets === null ? fixed : targets[i]!);
  }
  return count;
}
