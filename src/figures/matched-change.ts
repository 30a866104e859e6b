import { lagOneAutocorrelation } from '../maths/autocorrelation.ts';
import { leastSquares } from '../maths/least-squares.ts';
import { mean } from '../maths/mean.ts';
import { sampleStandardDeviation } from '../maths/sample-standard-deviation.ts';
import { studentQuantile } from '../maths/student-quantile.ts';
import { blocksADay } from './clock-blocks.ts';

/** Clock blocks `from` (inclusive) to `to` (exclusive). */
export interface BlockRange {
  readonly from: number;
  readonly to: number;
}

/** How one figure changed between two windows, compared at the same hours of the day. */
export interface MatchedChange {
  readonly before: number;
  readonly after: number;
  /** after − before, with its 95 % interval. */
  readonly difference: number;
  readonly low: number;
  readonly high: number;
  /** Blocks that the two sides rest on. */
  readonly blocksBefore: number;
  readonly blocksAfter: number;
}

/** Blocks of one day follow each other: they are never taken for more independent than this correlation leaves them. */
const leastCorrelation = 0.3;
const mostCorrelation = 0.8;
const fewestIndependent = 3;
const fewestBlocks = 3;

/**
 * Each block after is held against the mean of the blocks before at the same hours; hours that one side lacks do not
 * count. The interval is Welch's; a straight trend over a window is no scatter of its mean and is taken off, and the number of blocks on each side reduced for serial correlation to
 * n (1 − r) ÷ (1 + r), r being raised for its bias in short series. Null where a side has fewer than three blocks.
 */
export function matchedChange(
  values: Float64Array,
  before: BlockRange,
  after: BlockRange,
): MatchedChange | null {
  const usual = hourMeans(values, before);
  const changes: number[] = [];
  const levels: number[] = [];
  const hours = new Set<number>();
  for (let b = after.from; b < after.to; b++) {
    const change = values[b]! - usual[b % blocksADay]!;
    if (Number.isNaN(change)) continue;
    changes.push(change);
    levels.push(values[b]!);
    hours.add(b % blocksADay);
  }
  const scatter: number[] = [];
  for (let b = before.from; b < before.to; b++) {
    const away = values[b]! - usual[b % blocksADay]!;
    if (!Number.isNaN(away) && hours.has(b % blocksADay)) scatter.push(away);
  }
  if (changes.length < fewestBlocks || scatter.length < fewestBlocks) return null;
  const difference = mean(changes);
  const sides = [sideOf(changes), sideOf(scatter)];
  const variance = sides.reduce((sum, side) => sum + side.variance, 0);
  const freedom =
    variance === 0
      ? 1e6
      : variance ** 2 / sides.reduce((sum, side) => sum + side.variance ** 2 / side.freedom, 0);
  const half = studentQuantile(0.975, Math.max(1, freedom)) * Math.sqrt(variance);
  const level = mean(levels);
  return {
    before: level - difference,
    after: level,
    difference,
    low: difference - half,
    high: difference + half,
    blocksBefore: scatter.length,
    blocksAfter: changes.length,
  };
}

/** Mean of a figure at the hours of `like`, from the blocks of `range`; NaN where none of these hours is known. */
export function meanAtHoursOf(values: Float64Array, range: BlockRange, like: BlockRange): number {
  const usual = hourMeans(values, range);
  const matched: number[] = [];
  for (let b = like.from; b < like.to; b++) {
    if (!Number.isNaN(values[b]!)) matched.push(usual[b % blocksADay]!);
  }
  return mean(matched);
}

function hourMeans(values: Float64Array, { from, to }: BlockRange): number[] {
  return Array.from({ length: blocksADay }, (_, hour) => {
    const known: number[] = [];
    for (let b = from; b < to; b++)
      if (b % blocksADay === hour && !Number.isNaN(values[b]!)) known.push(values[b]!);
    return mean(known);
  });
}

function sideOf(levels: readonly number[]): { readonly variance: number; readonly freedom: number } {
  const values = withoutTrend(levels);
  const lagOne = lagOneAutocorrelation(values);
  const n = values.length;
  const raised = n > 8 ? (n * lagOne + 2) / (n - 4) : lagOne;
  const r = Math.min(mostCorrelation, Math.max(leastCorrelation, Number.isNaN(raised) ? 0 : raised));
  const independent = Math.max(fewestIndependent, (n * (1 - r)) / (1 + r));
  const deviation = sampleStandardDeviation(values);
  return { variance: (deviation * deviation) / independent, freedom: independent - 1 };
}

/** What is left of the values about their least-squares line. */
function withoutTrend(values: readonly number[]): number[] {
  return [...leastSquares([values.map(() => 1), values.map((_, i) => i)], values).residuals];
}
