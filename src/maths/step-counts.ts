import { countedQuantiles } from './counted-quantiles.ts';

/** More steps than these are no coarse log: counting them pays off no longer. */
const mostSteps = 4096;

/** Steps from `low` to `high`, both among them; 0 where there is no such range, no step, or there are too many. */
export function stepsWithin(low: number, high: number, resolution: number): number {
  const steps = Math.round((high - low) / resolution) + 1;
  return resolution > 0 && steps >= 1 && steps <= mostSteps ? steps : 0;
}

/**
 * Exact quantiles of readings that were logged in steps: each step is counted, and nothing sorted or selected. For many
 * small parts of one series; a part is counted, asked and cleared.
 */
export class StepCounts {
  readonly #low: number;
  readonly #perStep: number;
  /** The value that a step shows; NaN before it was met. */
  readonly #shown: Float64Array;
  readonly #counts: Int32Array;
  #from = 0;
  #to = 0;

  private constructor(low: number, steps: number, resolution: number) {
    this.#low = low;
    this.#perStep = 1 / resolution;
    this.#shown = new Float64Array(steps).fill(Number.NaN);
    this.#counts = new Int32Array(steps);
  }

  /** For a series of this `resolution`; null where it was not logged in steps, or in very many. */
  static of(values: Float64Array, resolution: number): StepCounts | null {
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < values.length; i++) {
      const value = values[i]!;
      if (value < low) low = value;
      if (value > high) high = value;
    }
    const steps = stepsWithin(low, high, resolution);
    return steps === 0 ? null : new StepCounts(low, steps, resolution);
  }

  /** Counts the first `count` of `values`, all known and of the series; false where two of them share a step. */
  count(values: Float64Array, count: number): boolean {
    const shown = this.#shown;
    const counts = this.#counts;
    const low = this.#low;
    const perStep = this.#perStep;
    let from = shown.length;
    let to = 0;
    for (let i = 0; i < count; i++) {
      const value = values[i]!;
      const step = Math.floor((value - low) * perStep + 0.5);
      if (shown[step] !== value) {
        if (!Number.isNaN(shown[step]!)) return false;
        shown[step] = value;
      }
      counts[step]!++;
      if (step < from) from = step;
      if (step >= to) to = step + 1;
    }
    this.#from = from;
    this.#to = to;
    return true;
  }

  /** Type 7 of what was counted, for ascending `shares`; NaN each of nothing. */
  quantiles(shares: readonly number[]): number[] {
    const [from, to] = [this.#from, Math.max(this.#from, this.#to)];
    return countedQuantiles(this.#shown.subarray(from, to), this.#counts.subarray(from, to), shares);
  }

  clear(): void {
    this.#counts.fill(0);
  }
}
