const smallest = 64;
const largest = 4096;

type NumberArray = Float64Array<ArrayBuffer> | Uint32Array<ArrayBuffer>;

/** A list of numbers that grows without copying what it holds: blocks, joined once at the end. */
export class GrowingNumbers<A extends NumberArray> {
  length = 0;
  private readonly make: (length: number) => A;
  private readonly full: A[] = [];
  private block: A;
  private used = 0;

  constructor(make: (length: number) => A) {
    this.make = make;
    this.block = make(smallest);
  }

  push(value: number): void {
    if (this.used === this.block.length) {
      this.full.push(this.block);
      this.block = this.make(Math.min(largest, this.block.length * 2));
      this.used = 0;
    }
    this.block[this.used++] = value;
    this.length++;
  }

  /** Replaces every value by `change(value, index)`. */
  map(change: (value: number, index: number) => number): void {
    let index = 0;
    for (const block of this.full)
      for (let at = 0; at < block.length; at++) block[at] = change(block[at]!, index++);
    for (let at = 0; at < this.used; at++) this.block[at] = change(this.block[at]!, index++);
  }

  /** All values in one array. */
  copy(): A {
    const whole = this.make(this.length);
    let at = 0;
    for (const block of this.full) {
      whole.set(block, at);
      at += block.length;
    }
    whole.set(this.block.subarray(0, this.used), at);
    return whole;
  }

  /** All values in one array; the list is empty afterwards. */
  take(): A {
    const whole = this.copy();
    this.full.length = 0;
    this.block = this.make(0);
    this.used = 0;
    this.length = 0;
    return whole;
  }
}

export function growingFloats(): GrowingNumbers<Float64Array<ArrayBuffer>> {
  return new GrowingNumbers((length) => new Float64Array(length));
}

/** Whole numbers from 0 to 4,294,967,295. */
export function growingCounts(): GrowingNumbers<Uint32Array<ArrayBuffer>> {
  return new GrowingNumbers((length) => new Uint32Array(length));
}
