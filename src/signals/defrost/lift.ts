import type { Grid } from '../../model/grid.ts';
import { samplesIn } from '../../model/grid.ts';
import type { Kelvin } from '../../units/quantities.ts';
import type { Stretch } from './stretch.ts';

/** How far the mean air of a stretch stands above that of the 45 minutes before it; NaN when either is unknown. */
export function liftIn(air: Float64Array, { from, to }: Stretch, grid: Grid): Kelvin {
  return meanOver(air, from, to) - meanOver(air, from - samplesIn(grid, 45), from);
}

/** Mean of the known values; NaN when fewer than half of them are known. */
export function meanOver(values: Float64Array, from: number, to: number): number {
  let sum = 0;
  let known = 0;
  for (let i = Math.max(0, from); i < Math.min(values.length, to); i++) {
    const value = values[i]!;
    if (Number.isNaN(value)) continue;
    sum += value;
    known++;
  }
  return known > 0 && 2 * known >= to - from ? sum / known : Number.NaN;
}
