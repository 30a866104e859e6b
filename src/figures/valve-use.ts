import { Phase } from '../signals/types.ts';

const halfOpen = 0.5;

/** What a valve did in the settled air of a stretch. */
export interface ValveUse {
  /** Settled samples with the valve known. */
  readonly known: number;
  /** Sum of the openings at them; of an on/off valve the samples in which it fed. */
  readonly fed: number;
  /** Changes from shut to open; they mean something of an on/off valve alone. */
  readonly starts: number;
}

/**
 * Of a stretch as long as a block or a day: a loop over all samples would be compiled anew for every circuit.
 *
 * @param values openings, 0 to 1, one a sample of the whole log
 */
export function valveUse(values: Float64Array, phase: Uint8Array, from: number, to: number): ValveUse {
  let known = 0;
  let fed = 0;
  let starts = 0;
  let before = from > 0 ? values[from - 1]! : Number.NaN;
  for (let i = from; i < to; i++) {
    const opening = values[i]!;
    if (phase[i] === Phase.cooling && !Number.isNaN(opening)) {
      known++;
      fed += opening;
      if (opening > halfOpen && before <= halfOpen) starts++;
    }
    before = opening;
  }
  return { known, fed, starts };
}
