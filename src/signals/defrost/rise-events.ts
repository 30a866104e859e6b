import { selectRank } from '../../maths/select-rank.ts';
import type { Grid } from '../../model/grid.ts';
import { samplesIn, stepMinutes } from '../../model/grid.ts';
import type { Kelvin, Minutes } from '../../units/quantities.ts';

/** A climb of the circuit's air and its way back. */
export interface RiseEvent {
  /** The foot of the climb. */
  readonly from: number;
  /** Just past the last sample near the peak. */
  readonly to: number;
  readonly rise: Kelvin;
}

/** A defrost climbs at least 6 °F in 20 minutes (common practice, no source). */
export const plainRise: Kelvin = 3.3;
const riseMinutes: Minutes = 20;
/** The least rise looked at: smaller ones are cycling. */
const leastRise: Kelvin = 1.5;
const shortestMinutes: Minutes = 6;
const longestMinutes: Minutes = 180;

/**
 * Climbs of `air` that stand out from its cycling: at least 1.5 K, and 1.6 times the climb of a usual cycle and
 * 0.6 K more, inside 20 minutes. The usual cycle is the lower third of the largest climbs of all hours.
 */
export function riseEvents(air: Float64Array, grid: Grid): RiseEvent[] {
  const window = Math.max(2, samplesIn(grid, riseMinutes));
  const { climbs, feet } = climbOver(air, window);
  const threshold = Math.max(leastRise, 1.6 * usualCycle(climbs, samplesIn(grid, 60)) + 0.6);
  const events: RiseEvent[] = [];
  let i = 0;
  while (i < air.length) {
    if (!(climbs[i]! >= threshold)) {
      i++;
      continue;
    }
    const event = followClimb(air, footOf(air, feet[i]!, grid), i, samplesIn(grid, longestMinutes));
    const minutes = (event.to - event.from) * stepMinutes(grid);
    if (minutes >= shortestMinutes && minutes < longestMinutes) events.push(event);
    i = Math.max(i + 1, event.over);
  }
  return events;
}

/** For each sample the climb above the lowest of the last `window` samples, and where that one is. */
function climbOver(air: Float64Array, window: number): { climbs: Float64Array; feet: Int32Array } {
  const count = air.length;
  const climbs = new Float64Array(count);
  const feet = new Int32Array(count);
  const queue = new Int32Array(count);
  let head = 0;
  let tail = 0;
  for (let i = 0; i < count; i++) {
    const value = air[i]!;
    if (head < tail && queue[head]! < i - window) head++;
    if (Number.isNaN(value)) {
      climbs[i] = Number.NaN;
      continue;
    }
    while (tail > head && air[queue[tail - 1]!]! >= value) tail--;
    queue[tail++] = i;
    feet[i] = queue[head]!;
    climbs[i] = value - air[queue[head]!]!;
  }
  return { climbs, feet };
}

function usualCycle(climbs: Float64Array, hour: number): Kelvin {
  const largest = new Float64Array(Math.ceil(climbs.length / hour));
  let hours = 0;
  for (let from = 0; from < climbs.length; from += hour) {
    let highest = Number.NEGATIVE_INFINITY;
    for (let i = from; i < Math.min(climbs.length, from + hour); i++)
      if (climbs[i]! > highest) highest = climbs[i]!;
    if (highest > Number.NEGATIVE_INFINITY) largest[hours++] = highest;
  }
  return hours === 0 ? 0 : selectRank(largest.subarray(0, hours), Math.floor(hours / 3));
}

/** A climb slower than 20 minutes has its foot further back: go on while ten minutes earlier it was colder. */
function footOf(air: Float64Array, found: number, grid: Grid): number {
  const look = samplesIn(grid, 10);
  const earliest = Math.max(0, found - samplesIn(grid, 60));
  let foot = found;
  for (;;) {
    let lowest = foot;
    for (let i = foot - 1; i >= Math.max(earliest, foot - look); i--) if (air[i]! < air[lowest]!) lowest = i;
    if (lowest === foot || air[foot]! - air[lowest]! < 0.3) return foot;
    foot = lowest;
  }
}

function followClimb(air: Float64Array, from: number, crossed: number, longest: number) {
  const base = air[from]!;
  let peak = base;
  let over = crossed;
  for (let i = from; i < Math.min(air.length, from + 2 * longest); i++) {
    const value = air[i]!;
    over = i;
    if (value > peak) peak = value;
    if (i > crossed && value < base + (peak - base) / 2) break;
  }
  let to = over;
  while (to > from + 1 && !(air[to - 1]! >= peak - 0.15 * (peak - base))) to--;
  return { from, to, rise: peak - base, over };
}
