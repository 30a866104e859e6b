import type { SampleRange } from '../exposure/exposure.ts';
import { selectQuantile, selectQuantiles } from '../maths/select-rank.ts';
import type { StepCounts } from '../maths/step-counts.ts';
import { Phase } from '../signals/types.ts';

/** Room for the settled readings of one probe; used again for every probe and day. */
export function settledBuffer(mostSamples: number): Float64Array {
  return new Float64Array(mostSamples);
}

/** Copies the known readings of `values` in settled air to the buffer from `at` on; gives the new end. */
export function addSettled(
  values: Float64Array,
  phase: Uint8Array,
  { from, to }: SampleRange,
  buffer: Float64Array,
  at = 0,
): number {
  for (let i = from; i < to; i++) {
    if (phase[i] === Phase.cooling && !Number.isNaN(values[i]!)) buffer[at++] = values[i]!;
  }
  return at;
}

/** Type 7 of the first `count` entries, which it rearranges; NaN for none. */
export function bufferQuantile(buffer: Float64Array, count: number, share: number): number {
  return selectQuantile(buffer, share, count);
}

/** The same of several ascending `shares`; by counting where the readings stand on the steps of `counts`. */
export function bufferQuantiles(
  buffer: Float64Array,
  count: number,
  shares: readonly number[],
  counts: StepCounts | null,
): number[] {
  const found = counts?.count(buffer, count)
    ? counts.quantiles(shares)
    : selectQuantiles(buffer, shares, count);
  counts?.clear();
  return found;
}

export function knownIn(values: Float64Array, { from, to }: SampleRange): number {
  let known = 0;
  for (let i = from; i < to; i++) if (!Number.isNaN(values[i]!)) known++;
  return known;
}
