import { median } from '../../maths/median.ts';
import type { Calendar, Grid } from '../../model/grid.ts';
import { minuteOfDay } from '../../model/grid.ts';
import type { Kelvin, Minutes } from '../../units/quantities.ts';
import { minutesADay } from '../local-minutes.ts';

/** A time of day at which the air usually stands above what it was before. */
export interface Bump {
  readonly minute: Minutes;
  readonly minutes: Minutes;
}

const binMinutes: Minutes = 5;
const bins = minutesADay / binMinutes;
const fewestDays = 5;
/** A bump rises at least this far above the air of the hours around it, and eight times the scatter of the fold. */
const leastBump: Kelvin = 0.8;
const shortestBump: Minutes = 10;
const longestBump: Minutes = 150;

/**
 * Bumps that recur at the same time of day: the days are laid over each other and the median day taken, in which
 * cycling, never in step with the clock, averages out, and defrosts, which are, remain.
 */
export function recurringBumps(air: Float64Array, grid: Grid, calendar: Calendar): Bump[] {
  if (calendar.days.length < fewestDays) return [];
  const folded = medianDay(air, grid, calendar);
  const lifted = folded.map((value, bin) => value - surroundings(folded, bin));
  const scatter = median(lifted.map((value, bin) => Math.abs(value - lifted[(bin + 1) % bins]!)));
  const threshold = Math.max(leastBump, 8 * scatter);
  const bumps: Bump[] = [];
  for (let bin = 0; bin < bins; bin++) {
    const before = lifted[(bin + bins - 1) % bins]!;
    if (!(lifted[bin]! >= threshold) || before >= threshold) continue;
    let length = 1;
    while (length < bins && lifted[(bin + length) % bins]! >= threshold) length++;
    const minutes = length * binMinutes;
    if (minutes < shortestBump || minutes > longestBump) continue;
    bumps.push({ minute: (bin * binMinutes + minutesADay - binMinutes) % minutesADay, minutes });
  }
  return bumps;
}

function medianDay(air: Float64Array, grid: Grid, calendar: Calendar): Float64Array {
  const byBin: number[][] = Array.from({ length: bins }, () => []);
  for (const day of calendar.days) {
    const sums = new Float64Array(bins);
    const counts = new Int32Array(bins);
    for (let i = day.from; i < day.to; i++) {
      if (Number.isNaN(air[i]!)) continue;
      const bin = Math.floor(minuteOfDay(grid, calendar, i) / binMinutes);
      sums[bin]! += air[i]!;
      counts[bin]!++;
    }
    for (let bin = 0; bin < bins; bin++) if (counts[bin]! > 0) byBin[bin]!.push(sums[bin]! / counts[bin]!);
  }
  const folded = Float64Array.from(byBin, median);
  for (let bin = 0; bin < bins; bin++)
    if (Number.isNaN(folded[bin]!)) folded[bin] = folded[(bin + bins - 1) % bins]!;
  return folded;
}

/** The lower quarter of the two hours either side. */
function surroundings(folded: Float64Array, bin: number): number {
  const reach = 120 / binMinutes;
  const around: number[] = [];
  for (let i = -reach; i <= reach; i++) around.push(folded[(bin + i + bins) % bins]!);
  around.sort((a, b) => a - b);
  return around[Math.floor(around.length / 4)]!;
}
