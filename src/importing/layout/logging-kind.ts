import type { ColumnProfile } from '../values/column-profile.ts';

/** Share of equal steps that makes a log a regular one. */
const regularShare = 0.75;
/** Share of readings that may repeat the one before in a log written on change, where they follow it at once. */
const mostRepeats = 0.02;
const mostSteps = 5000;

/** How regular a sequence of times is. */
export interface Regularity {
  /** Share of the commonest step. */
  readonly share: number;
  /** Long steps against short ones. */
  readonly spread: number;
}

/** Regularity of the steps between the readings of ascending `times` that `has` keeps. */
export function regularity(times: Float64Array, values: Float64Array | null): Regularity {
  const steps = new Map<number, number>();
  let count = 0;
  let before = Number.NaN;
  let lastStep = Number.NaN;
  let run = 0;
  const close = (): void => {
    if (run > 0 && (steps.size < mostSteps || steps.has(lastStep)))
      steps.set(lastStep, (steps.get(lastStep) ?? 0) + run);
  };
  for (let at = 0; at < times.length; at++) {
    if (values !== null && Number.isNaN(values[at]!)) continue;
    const time = times[at]!;
    const step = Math.round((time - before) / 1000);
    before = time;
    if (Number.isNaN(step)) continue;
    count++;
    if (step === lastStep) {
      run++;
      continue;
    }
    close();
    lastStep = step;
    run = 1;
  }
  close();
  let most = 0;
  for (const each of steps.values()) most = Math.max(most, each);
  const lengths = [...steps.keys()].sort((a, b) => a - b);
  const low = lengths[Math.floor(lengths.length * 0.1)] ?? 1;
  const high = lengths[Math.floor(lengths.length * 0.9)] ?? 1;
  return { share: count === 0 ? 1 : most / count, spread: high / Math.max(low, 1) };
}

/** Whether a column of a table holds a value in nearly every one of its regular rows. */
export function isSampled(
  ofTable: Regularity,
  { readings }: Pick<ColumnProfile, 'readings'>,
  rows: number,
): boolean {
  return ofTable.share >= regularShare && readings >= 0.9 * rows;
}

/**
 * Whether the readings of a point were written on change: a value hardly ever repeats the one just before it, and
 * either their steps are irregular, or the value never moves by less than a threshold that it often just passes. The
 * latter holds of a lively probe too, which passes its threshold at most scans and so writes at almost regular times.
 * A value repeated after a long rest is a sign of life and speaks for neither. `ofTable` is the regularity of all
 * rows, known for a table whose points share their times.
 */
export function loggingKind(
  times: Float64Array,
  values: Float64Array,
  { readings }: ColumnProfile,
  ofTable: Regularity | null,
): 'sampled' | 'change-of-value' {
  if (readings < 3) return 'sampled';
  if (ofTable !== null && isSampled(ofTable, { readings }, times.length)) return 'sampled';
  const own = regularity(times, values);
  if (own.share === 1) return 'sampled';
  const moves = quickMoves(times, values);
  if (moves.lastIndexOf(0) + 1 > mostRepeats * moves.length) return 'sampled';
  const isIrregular = own.share < regularShare && own.spread > 3;
  return isIrregular || leaveOutSmall(moves) ? 'change-of-value' : 'sampled';
}

const rowsRead = 20_000;
/** Longest gap across which a move counts, in median gaps. */
const quickGaps = 2;

/** Sizes of the moves from one reading to the next that followed it soon, ascending; of the first rows of long logs. */
function quickMoves(times: Float64Array, values: Float64Array): Float64Array {
  const most = Math.min(values.length, rowsRead);
  const gaps = new Float64Array(most);
  const moves = new Float64Array(most);
  let count = 0;
  let before = -1;
  for (let at = 0; at < values.length && count < most; at++) {
    if (Number.isNaN(values[at]!)) continue;
    if (before >= 0) {
      gaps[count] = times[at]! - times[before]!;
      moves[count++] = Math.abs(values[at]! - values[before]!);
    }
    before = at;
  }
  const longest = quickGaps * gaps.slice(0, count).sort()[count >> 1]!;
  return moves.filter((_, at) => at < count && gaps[at]! <= longest).sort();
}

const fewestMoves = 50;
/**
 * Share of the moves from the threshold to twice it. In steps of 0, 1, 2, …, a sampled value that stands still in at
 * most 2 % of its readings moves by 1 and by 2 in at most 4 % each.
 */
const justPassedShare = 0.12;

/** Whether moves leave out a band around none at all, though many are just beyond it. Takes them ascending. */
function leaveOutSmall(moves: Float64Array): boolean {
  if (moves.length < fewestMoves) return false;
  const threshold = moves[Math.floor(mostRepeats * moves.length)]!;
  const justPassed = moves.filter((move) => move >= threshold && move <= 2 * threshold).length;
  return threshold > 0 && justPassed >= justPassedShare * moves.length;
}
