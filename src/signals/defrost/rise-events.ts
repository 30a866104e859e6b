import { quantiles } from '../../maths/quantile.ts';
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
const footMinutes: Minutes = 20;
/** The least that is looked at: over the tops of the cycles, and from the foot of the climb. */
const leastOvershoot: Kelvin = 0.5;
const leastRise: Kelvin = 1.2;
const shortestMinutes: Minutes = 6;
const longestMinutes: Minutes = 180;

/**
 * Climbs of `air` past the tops of its cycles: a controller lets the air no higher than it cuts in again, except
 * in a defrost (or when warm goods come in). The usual top is the lower third of the hourly maxima of the six
 * hours either side, the margin twice their spread below it, at least 0.5 K.
 */
export function riseEvents(air: Float64Array, grid: Grid): RiseEvent[] {
  const hour = samplesIn(grid, 60);
  const limits = usualTops(hourlyMaxima(air, hour));
  const events: RiseEvent[] = [];
  let i = 0;
  while (i < air.length) {
    if (!(air[i]! > limits[Math.floor(i / hour)]!)) {
      i++;
      continue;
    }
    const event = followClimb(
      air,
      footOf(air, lowestBefore(air, i, grid), grid),
      i,
      samplesIn(grid, longestMinutes),
    );
    const minutes = (event.to - event.from) * stepMinutes(grid);
    const isDefrostLike = minutes >= shortestMinutes && minutes < longestMinutes && event.rise >= leastRise;
    if (isDefrostLike) addClimb(events, event);
    i = Math.max(i + 1, event.over);
  }
  return events;
}

/** Climbs that share samples are one climb, seen again on its way down or from a smaller one before it. */
function addClimb(events: RiseEvent[], climb: RiseEvent): void {
  const last = events.at(-1);
  if (last === undefined || climb.from >= last.to) events.push(climb);
  else if (climb.rise > last.rise) events[events.length - 1] = climb;
}

function hourlyMaxima(air: Float64Array, hour: number): Float64Array {
  const maxima = new Float64Array(Math.ceil(air.length / hour));
  for (let k = 0; k < maxima.length; k++) {
    let highest = Number.NaN;
    for (let i = k * hour; i < Math.min(air.length, (k + 1) * hour); i++)
      if (!(air[i]! <= highest) && !Number.isNaN(air[i]!)) highest = air[i]!;
    maxima[k] = highest;
  }
  return maxima;
}

/** For each hour the top of the usual cycles around it and the margin together. */
function usualTops(maxima: Float64Array): Float64Array {
  return maxima.map((_, k) => {
    const [low, top] = quantiles(maxima.subarray(Math.max(0, k - 6), k + 7), [0.1, 1 / 3]) as [
      number,
      number,
    ];
    return top + Math.max(leastOvershoot, 2 * (top - low));
  });
}

function lowestBefore(air: Float64Array, crossed: number, grid: Grid): number {
  let lowest = crossed;
  for (let i = crossed; i >= Math.max(0, crossed - samplesIn(grid, footMinutes)); i--)
    if (air[i]! < air[lowest]!) lowest = i;
  return lowest;
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
  while (to > from + 1 && !(air[to - 1]! >= peak - 0.05 * (peak - base))) to--;
  return { from, to, rise: peak - base, over };
}
