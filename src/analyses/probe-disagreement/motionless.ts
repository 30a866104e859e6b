import { median } from '../../maths/median.ts';
import { samplesIn } from '../../model/grid.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { settings } from './settings.ts';

/** Samples, half open. */
interface Run {
  readonly from: number;
  readonly to: number;
}

/** A stretch in which one probe read the same number while its neighbours lived. Samples, half open. */
export interface Motionless {
  readonly from: number;
  readonly to: number;
  readonly value: number;
  /** Distance from what the probe itself read before, where it read; else from the nearest neighbour, K. */
  readonly distance: number;
}

/** How far the neighbours must have moved meanwhile, K: a defrost or plain cycling does it. */
const neighboursMoved = 2;
/** Cycling in steps as coarse as the cycle itself can look flat: so many steps of the logger must have passed. */
const stepsPassed = 3;

/** K. Moving air that cycles or is defrosted leaves it at once. */
const mostTrembling = 0.25;

/** The longest motionless stretch of the probe, or null. The neighbours are the test: they must have moved. */
export function motionless(
  signals: CircuitSignals,
  probe: number,
  peers: readonly number[],
): Motionless | null {
  const { values, resolution } = signals.circuit.probes[probe]!.record;
  const { grid } = signals.log;
  const found = longerOf(
    pastADefrost(longestRun(values, samplesIn(grid, settings.stuckHours.value * 60)), resolution, signals),
    longestRun(values, samplesIn(grid, settings.tremblingHours.value * 60), trembling(resolution)),
  );
  if (found === null) return null;
  const others = peers.map((peer) =>
    signals.circuit.probes[peer]!.record.values.subarray(found.from, found.to),
  );
  const least2 = Math.max(neighboursMoved, stepsPassed * resolution);
  if (!others.some((other) => rangeOf(other) >= least2)) return null;
  const value = values[found.from]!;
  const before = median(values.subarray(Math.max(0, found.from - samplesIn(grid, 1440)), found.from));
  const distance = Number.isNaN(before) ? distanceFrom(others, value) : Math.abs(value - before);
  return { ...found, value, distance };
}

/**
 * In steps as coarse as a control holds its probe, hours of one reading between two defrosts are good control: only a
 * defrost inside them, or a day of them, shows a probe that stopped.
 */
function pastADefrost(run: Run | null, resolution: number, signals: CircuitSignals): Run | null {
  const { grid } = signals.log;
  if (run === null || resolution <= mostTrembling || signals.defrosts.length === 0) return run;
  const isDay = run.to - run.from >= samplesIn(grid, settings.tremblingHours.value * 60);
  return isDay || signals.defrosts.some(({ from, to }) => from >= run.from && to <= run.to) ? run : null;
}

/** A stretch that stands still but for its last digit holds any shorter one that does not even tremble. */
function longerOf(one: Run | null, other: Run | null): Run | null {
  if (one === null || other === null) return one ?? other;
  return other.to - other.from > one.to - one.from ? other : one;
}

/** A last digit that trembles about one value, K: some steps of a fine logger, none of a coarse one. */
function trembling(resolution: number): number {
  return resolution > mostTrembling ? 0 : Math.min(mostTrembling, 2.5 * resolution);
}

/**
 * The longest run of `least` samples or more, first to last of one reading with nothing but gaps between; the first of
 * several. Any such run holds a sample whose position is a multiple of `least`: only there is it looked for. With
 * `within` above 0 the readings stay so near to the one at that position.
 */
export function longestRun(values: Float64Array, least: number, within = 0): Run | null {
  let best: Run | null = null;
  let seen = 0;
  for (let anchor = 0; anchor < values.length; anchor += least) {
    if (anchor < seen) continue;
    let inside = anchor;
    while (inside < values.length && Number.isNaN(values[inside]!)) inside++;
    if (inside === values.length) break;
    const from = lastSame(values, inside, -1, within);
    const last = lastSame(values, inside, 1, within);
    seen = last + 1;
    const length = last + 1 - from;
    if (length >= least && (best === null || length > best.to - best.from)) best = { from, to: last + 1 };
  }
  return best;
}

/** The farthest sample from `start` on that reads the same `within` some kelvin, with only gaps between; steps by `direction`. */
function lastSame(values: Float64Array, start: number, direction: 1 | -1, within: number): number {
  const value = values[start]!;
  let last = start;
  for (let i = start + direction; i >= 0 && i < values.length; i += direction) {
    const here = values[i]!;
    if (Math.abs(here - value) <= within) last = i;
    else if (!Number.isNaN(here)) break;
  }
  return last;
}

function rangeOf(values: Float64Array): number {
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (value < lowest) lowest = value;
    if (value > highest) highest = value;
  }
  return highest - lowest;
}

/** Smallest over the neighbours of the mean distance to `value`. */
function distanceFrom(others: readonly Float64Array[], value: number): number {
  let nearest = Number.POSITIVE_INFINITY;
  for (const other of others) {
    let sum = 0;
    let known = 0;
    for (const reading of other) {
      if (Number.isNaN(reading)) continue;
      sum += Math.abs(reading - value);
      known++;
    }
    if (known > 0) nearest = Math.min(nearest, sum / known);
  }
  return nearest;
}
