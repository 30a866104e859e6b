/**
 * Quantiles of values that were logged in steps, without sorting: values are counted in bins one logging step
 * wide, and a quantile is interpolated inside its bin, L + w (p n − F(L)) / f(L), so that a median of readings
 * in whole degrees does not stick to whole degrees.
 */
export class BinnedValues {
  readonly #width: number;
  readonly #counts: Int32Array;
  readonly #offset: number;
  /** Whole numbers, so that counting allocates nothing: the lowest bin in use lies above the highest while none is. */
  #lowest: number;
  #highest = -1;
  #total = 0;

  /** Values outside `low` to `high` count in the outermost bins. */
  constructor(width: number, low: number, high: number) {
    this.#width = width;
    this.#offset = Math.floor(low / width);
    this.#counts = new Int32Array(Math.ceil(high / width) - this.#offset + 1);
    this.#lowest = this.#counts.length;
  }

  get total(): number {
    return this.#total;
  }

  add(value: number): void {
    this.addAt(this.binOf(value));
  }

  /** The bin of a value, the same in all that have this width and range. */
  binOf(value: number): number {
    const bin = Math.round(value / this.#width) - this.#offset;
    return bin < 0 ? 0 : bin >= this.#counts.length ? this.#counts.length - 1 : bin;
  }

  addAt(bin: number): void {
    this.#counts[bin]!++;
    if (bin < this.#lowest) this.#lowest = bin;
    if (bin > this.#highest) this.#highest = bin;
    this.#total++;
  }

  /** The quantile `share` (0 to 1), or NaN when nothing was added. */
  quantile(share: number): number {
    if (this.#total === 0) return Number.NaN;
    const wanted = share * this.#total;
    let below = 0;
    for (let bin = this.#lowest; bin <= this.#highest; bin++) {
      const here = this.#counts[bin]!;
      if (here > 0 && below + here >= wanted) {
        return (bin + this.#offset - 0.5 + (wanted - below) / here) * this.#width;
      }
      below += here;
    }
    return (this.#highest + this.#offset + 0.5) * this.#width;
  }

  clear(): void {
    if (this.#total > 0) this.#counts.fill(0, this.#lowest, this.#highest + 1);
    this.#lowest = this.#counts.length;
    this.#highest = -1;
    this.#total = 0;
  }
}
