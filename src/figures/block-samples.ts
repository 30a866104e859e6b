import { selectQuantile } from '../maths/select-rank.ts';
import type { Grid } from '../model/grid.ts';
import { samplesIn } from '../model/grid.ts';
import { blockHours } from './clock-blocks.ts';

/** The hour that a block gains when the clocks go back, and one to spare. */
const spareHours = 2;

/** Collects the samples of one clock block at a time. */
export class BlockSamples {
  readonly #buffer: Float64Array;
  #count = 0;

  constructor(grid: Grid) {
    this.#buffer = new Float64Array(samplesIn(grid, (blockHours + spareHours) * 60));
  }

  add(value: number): void {
    if (!Number.isNaN(value) && this.#count < this.#buffer.length) this.#buffer[this.#count++] = value;
  }

  /** Type 7 of Hyndman and Fan, NaN for fewer than `least` samples. */
  quantile(share: number, least: number): number {
    if (this.#count < least) return Number.NaN;
    return selectQuantile(this.#buffer.subarray(0, this.#count), share);
  }

  clear(): void {
    this.#count = 0;
  }
}
