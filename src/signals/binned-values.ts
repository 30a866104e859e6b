/**
 * Quantiles of values that were logged in steps, without sorting: values are counted in bins one logging step
 * wide, and a quantile is interpolated inside its bin, L + w (p n − F(L)) / f(L), so that a median of readings
 * in whole degrees does not stick to whole degrees.
 */
export class BinnedValues {
  readonly #width: number;
  readonly #binsPerUnit: number;
  readonly #counts: Int32Array;
  readonly #offset: number;
  /** Whole numbers, so that counting allocates nothing: the lowest bin in use lies above the highest while none is. */
  #lowest: number;
  #highest = -1;
  #total = 0;

  /** Values outside `low` to `high` count in the outermost bins. */
  constructor(width: number, low: number, high: number) {
    this.#width = width;
    this.#binsPerUnit = 1 / width;
    this.#offset = Math.floor(low / width);
    this.#counts = new Int32Array(Math.ceil(high / width) - this.#offset + 1);
    this.#lowest = this.#counts.length;
  }

  get total(): number {
    return this.#total;
  }

  add(value: number): void {
    const bin = this.#binOf(value);
    this.#counts[bin]!++;
    this.#widen(bin, bin);
    this.#total++;
  }

  /** Adds the known ones of `values` from sample `from` to `to` (exclusive). */
  addKnown(values: Float64Array, from: number, to: number): void {
    const counts = this.#counts;
    const perUnit = this.#binsPerUnit;
    const offset = this.#offset;
    const last = counts.length - 1;
    let lowest = Number.POSITIVE_INFINITY;
    let highest = Number.NEGATIVE_INFINITY;
    let added = 0;
    for (let i = from; i < to; i++) {
      const value = values[i]!;
      if (Number.isNaN(value)) continue;
      if (value < lowest) lowest = value;
      if (value > highest) highest = value;
      const place = Math.floor(value * perUnit + 0.5) - offset;
      counts[place > 0 ? (place < last ? place | 0 : last) : 0]!++;
      added++;
    }
    if (added === 0) return;
    this.#widen(this.#binOf(lowest), this.#binOf(highest));
    this.#total += added;
  }

  /** Adds all that `other` holds, which has the same width and range. */
  addAll(other: BinnedValues): void {
    for (let bin = other.#lowest; bin <= other.#highest; bin++) this.#counts[bin]! += other.#counts[bin]!;
    this.#widen(other.#lowest, other.#highest);
    this.#total += other.#total;
  }

  #binOf(value: number): number {
    return held(Math.floor(value * this.#binsPerUnit + 0.5) - this.#offset, this.#counts.length - 1);
  }

  #widen(lowest: number, highest: number): void {
    if (lowest < this.#lowest) this.#lowest = lowest;
    if (highest > this.#highest) this.#highest = highest;
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

function held(bin: number, last: number): number {
  return Math.max(0, Math.min(bin, last));
}
