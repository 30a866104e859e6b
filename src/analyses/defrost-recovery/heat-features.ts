import { median } from '../../maths/median.ts';
import type { DefrostEvent } from './events.ts';

/** How fast and how far the air rises in the defrosts from `at` on, beside those before. */
export function heatFeatures(events: readonly DefrostEvent[], at: number): { [name: string]: number } {
  const ratioOf = (values: readonly number[]) => median(values.slice(at)) / median(values.slice(0, at));
  const heatRateRatio = ratioOf(events.map((event) => event.rate));
  const heatRiseRatio = ratioOf(events.map((event) => event.rise));
  return Number.isFinite(heatRateRatio) && Number.isFinite(heatRiseRatio)
    ? { heatRateRatio, heatRiseRatio }
    : {};
}
