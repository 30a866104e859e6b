const smallest = 64;
const largest = 16_384;

/** A list of numbers that grows without copying what it holds: blocks, joined once at the end. */
export class GrowingFloats {
  length = 0;
  private readonly full: Float64Array[] = [];
  private block = new Float64Array(smallest);
  private used = 0;

  push(value: number): void {
    if (this.used === this.block.length) {
      this.full.push(this.block);
      this.block = new Float64Array(Math.min(largest, this.block.length * 2));
      this.used = 0;
    }
    this.block[this.used++] = value;
    this.length++;
  }

  /** Replaces every value by `change(value)`. */
  map(change: (value: number) => number): void {
    for (const block of this.full) for (let at = 0; at < block.length; at++) block[at] = change(block[at]!);
    for (let at = 0; at < this.used; at++) this.block[at] = change(this.block[at]!);
  }

  /** All values in one array; the list is empty afterwards. */
  take(): Float64Array {
    const whole = new Float64Array(this.length);
    let at = 0;
    for (const block of this.full) {
      whole.set(block, at);
      at += block.length;
    }
    whole.set(this.block.subarray(0, this.used), at);
    this.full.length = 0;
    this.block = new Float64Array(smallest);
    this.used = 0;
    this.length = 0;
    return whole;
  }
}
