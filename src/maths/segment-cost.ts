/** Sums by which the squared distance from the mean of any stretch of a series is had at once. Values must be finite. */
export class SegmentCost {
  readonly length: number;
  private readonly sums: Float64Array;
  private readonly squares: Float64Array;

  constructor(values: ArrayLike<number>) {
    this.length = values.length;
    this.sums = new Float64Array(values.length + 1);
    this.squares = new Float64Array(values.length + 1);
    // From a value of the series itself, so that a large mean costs no digits.
    const origin = values.length > 0 ? values[values.length >> 1]! : 0;
    for (let i = 0; i < values.length; i++) {
      const value = values[i]! - origin;
      this.sums[i + 1] = this.sums[i]! + value;
      this.squares[i + 1] = this.squares[i]! + value * value;
    }
  }

  /** Sum of squared distances from the mean over samples `from` (inclusive) to `to` (exclusive). */
  between(from: number, to: number): number {
    const sum = this.sums[to]! - this.sums[from]!;
    return Math.max(0, this.squares[to]! - this.squares[from]! - (sum * sum) / (to - from));
  }
}
