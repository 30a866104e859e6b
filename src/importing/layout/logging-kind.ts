import type { ColumnProfile } from '../values/column-profile.ts';

/** Share of equal steps that makes a log a regular one. */
const regularShare = 0.75;
/** Share of readings that may repeat the one before in a log written on change. */
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

/**
 * Whether the readings of a point were written on change: their steps are irregular and a value hardly ever
 * follows itself. `ofTable` is the regularity of all rows, known for a table whose points share their times.
 */
export function loggingKind(
  times: Float64Array,
  values: Float64Array,
  profile: ColumnProfile,
  ofTable: Regularity | null,
): 'sampled' | 'change-of-value' {
  const { readings } = profile;
  if (readings < 3 || profile.repeats > mostRepeats * (readings - 1)) return 'sampled';
  if (ofTable !== null && ofTable.share >= regularShare && readings >= 0.9 * times.length) return 'sampled';
  const own = regularity(times, values);
  return own.share < regularShare && own.spread > 3 ? 'change-of-value' : 'sampled';
}
