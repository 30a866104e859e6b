import { median } from './median.ts';
import { normalConsistency } from './median-absolute-deviation.ts';
import { RampCosts } from './ramp-costs.ts';

/** How large and how clear a ramp must be to count. */
export interface Clarity {
  readonly leastSize: number;
  /** Size in robust scales of the residuals (the scale held above `leastScale`). */
  readonly leastScales: number;
  readonly leastScale: number;
  readonly leastExplained: number;
}

/**
 * The ramp of `fitRamp` where it is clear, else null. Values that never lie `leastSize` apart hold no ramp of that
 * size, and none is fitted to them.
 */
export function clearRamp(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
  clarity: Clarity,
): Ramp | null {
  if (spanOf(values) < clarity.leastSize) return null;
  const ramp = fitRamp(times, values);
  return ramp !== null && isClear(ramp, clarity) ? ramp : null;
}

/** Largest less smallest finite value; −∞ where there is none. */
export function spanOf(values: ArrayLike<number>): number {
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (!Number.isFinite(value)) continue;
    if (value < lowest) lowest = value;
    if (value > highest) highest = value;
  }
  return highest - lowest;
}

export function isClear(ramp: Ramp, clarity: Clarity): boolean {
  const size = Math.abs(ramp.after - ramp.before);
  return (
    size >= clarity.leastSize &&
    size >= clarity.leastScales * Math.max(clarity.leastScale, ramp.scale) &&
    ramp.explained >= clarity.leastExplained
  );
}

/** A level that holds, changes between two times, and holds again. A step is a ramp of no length. */
export interface Ramp {
  readonly before: number;
  readonly after: number;
  /** Positions in the series: the last one still at `before`, the first one at `after`. */
  readonly start: number;
  readonly end: number;
  /** Robust scale of what the ramp leaves unexplained (1.4826 · median |residual|). */
  readonly scale: number;
  /** Weighted squared error with the ramp, and with one level for all. */
  readonly cost: number;
  readonly flatCost: number;
  /** Probability of a ramp against the best step, both held equally likely before: 1 ÷ (1 + e^(−ΔBIC/2)). */
  readonly rampProbability: number;
  /** Share of the squared variation that the ramp explains, 0 to 1. */
  readonly explained: number;
}

const candidateLimit = 80;
const huber = 1.5;

/**
 * Least squares over all pairs of knees, twice: the second pass gives points beyond 1.5 robust scales of the
 * first fit the weight that Huber (1964, Ann. Math. Statist. 35:73) gives them. A piecewise-linear fit with
 * two knees holds a step, a creep that is still going on and a creep that has levelled off.
 *
 * @param times ascending, any unit
 * @param values one a time; NaN where nothing is known
 * @returns null with fewer than four known values
 */
export function fitRamp(times: ArrayLike<number>, values: ArrayLike<number>): Ramp | null {
  const known: number[] = [];
  for (let i = 0; i < values.length; i++) if (Number.isFinite(values[i]!)) known.push(i);
  if (known.length < 4) return null;
  const t = Float64Array.from(known, (i) => times[i]!);
  const y = Float64Array.from(known, (i) => values[i]!);
  const weights = new Float64Array(t.length).fill(1);
  const first = bestKnees(t, y, weights);
  const scale = residualScale(t, y, first);
  if (scale > 0) {
    for (let i = 0; i < t.length; i++) {
      const distance = Math.abs(y[i]! - valueAt(t, first, i)) / scale;
      weights[i] = distance > huber ? huber / distance : 1;
    }
  }
  const best = bestKnees(t, y, weights);
  const flat = flatCost(y, weights);
  return {
    before: best.before,
    after: best.after,
    start: known[best.start]!,
    end: known[best.end]!,
    scale: residualScale(t, y, best),
    cost: best.cost,
    flatCost: flat,
    rampProbability: best.rampProbability,
    explained: flat > 0 ? Math.max(0, 1 - best.cost / flat) : 0,
  };
}

interface Knees {
  before: number;
  after: number;
  start: number;
  end: number;
  cost: number;
}

/**
 * The best pair of knees; a step (neighbouring knees) unless a longer ramp is worth its further parameter by the
 * Bayesian information criterion: n · ln(cost of the step ÷ cost of the ramp) > ln n.
 */
function bestKnees(
  t: Float64Array,
  y: Float64Array,
  weights: Float64Array,
): Knees & { rampProbability: number } {
  const last = t.length - 1;
  const stride = Math.max(1, Math.ceil(t.length / candidateLimit));
  const costs = new RampCosts(t, y, weights);
  let step = levels(t, y, weights, 0, 1);
  for (let start = 1; start < last; start++) {
    if (costs.costOf(start, start + 1) > step.cost + costs.slack) continue;
    const fit = levels(t, y, weights, start, start + 1);
    if (fit.cost < step.cost) step = fit;
  }
  let ramp = step;
  const consider = (start: number, end: number): void => {
    if (costs.costOf(start, end) > ramp.cost + costs.slack) return;
    const fit = levels(t, y, weights, start, end);
    if (fit.cost < ramp.cost) ramp = fit;
  };
  for (let start = 0; start < last; start += stride) {
    for (let end = start + 2; end < last; end += stride) consider(start, end);
    consider(start, last);
  }
  if (stride > 1) {
    const { start, end } = ramp;
    for (let s = Math.max(0, start - stride); s <= Math.min(last - 1, start + stride); s++) {
      for (let e = Math.max(s + 1, end - stride); e <= Math.min(last, end + stride); e++) consider(s, e);
    }
  }
  const gain = t.length * Math.log(step.cost / ramp.cost) - Math.log(t.length);
  if (step.cost === 0) return { ...step, rampProbability: 0 };
  if (ramp.cost === 0) return { ...ramp, rampProbability: 1 };
  return { ...(gain > 0 ? ramp : step), rampProbability: 1 / (1 + Math.exp(-gain / 2)) };
}

/** Share of the way from `before` to `after` at time `at`. */
function progress(at: number, start: number, end: number): number {
  return Math.max(0, Math.min(1, (at - start) / (end - start)));
}

function valueAt(t: Float64Array, knees: Knees, index: number): number {
  const share = progress(t[index]!, t[knees.start]!, t[knees.end]!);
  return knees.before + (knees.after - knees.before) * share;
}

/** Both levels by weighted least squares for given knees. */
function levels(t: Float64Array, y: Float64Array, weights: Float64Array, start: number, end: number): Knees {
  let w = 0;
  let sumG = 0;
  let sumGG = 0;
  let sumY = 0;
  let sumGY = 0;
  let sumYY = 0;
  for (let i = 0; i < t.length; i++) {
    const g = progress(t[i]!, t[start]!, t[end]!);
    const weight = weights[i]!;
    w += weight;
    sumG += weight * g;
    sumGG += weight * g * g;
    sumY += weight * y[i]!;
    sumGY += weight * g * y[i]!;
    sumYY += weight * y[i]! * y[i]!;
  }
  const spread = sumGG - (sumG * sumG) / w;
  const slope = spread > 0 ? (sumGY - (sumG * sumY) / w) / spread : 0;
  const before = (sumY - slope * sumG) / w;
  const cost = Math.max(0, sumYY - before * sumY - slope * sumGY);
  return { before, after: before + slope, start, end, cost };
}

function flatCost(y: Float64Array, weights: Float64Array): number {
  let w = 0;
  let sum = 0;
  let squares = 0;
  for (let i = 0; i < y.length; i++) {
    w += weights[i]!;
    sum += weights[i]! * y[i]!;
    squares += weights[i]! * y[i]! * y[i]!;
  }
  return Math.max(0, squares - (sum * sum) / w);
}

function residualScale(t: Float64Array, y: Float64Array, knees: Knees): number {
  return normalConsistency * median(y.map((value, i) => Math.abs(value - valueAt(t, knees, i))));
}
