/**
 * Squared error of every two-knee ramp through one weighted series, each in constant time from running sums. Sums of
 * differences lose digits, so that a cost is told only to within `slack`: enough to rule most knees out.
 */
export class RampCosts {
  /** No cost is further than this from the one that is summed sample by sample. */
  readonly slack: number;
  readonly #times: Float64Array;
  readonly #weight: Float64Array;
  readonly #time: Float64Array;
  readonly #timeSquared: Float64Array;
  readonly #value: Float64Array;
  readonly #timeValue: Float64Array;
  readonly #squares: number;

  /** `times` ascending; all of one length, all finite. Takes time and values from their start and their mean. */
  constructor(times: Float64Array, values: Float64Array, weights: Float64Array) {
    const count = times.length;
    const mean = values.reduce((sum, value) => sum + value, 0) / count;
    this.#times = times.map((time) => time - times[0]!);
    this.#weight = new Float64Array(count + 1);
    this.#time = new Float64Array(count + 1);
    this.#timeSquared = new Float64Array(count + 1);
    this.#value = new Float64Array(count + 1);
    this.#timeValue = new Float64Array(count + 1);
    let squares = 0;
    let plainSquares = 0;
    for (let i = 0; i < count; i++) {
      const weight = weights[i]!;
      const time = this.#times[i]!;
      const value = values[i]! - mean;
      this.#weight[i + 1] = this.#weight[i]! + weight;
      this.#time[i + 1] = this.#time[i]! + weight * time;
      this.#timeSquared[i + 1] = this.#timeSquared[i]! + weight * time * time;
      this.#value[i + 1] = this.#value[i]! + weight * value;
      this.#timeValue[i + 1] = this.#timeValue[i]! + weight * time * value;
      squares += weight * value * value;
      plainSquares += weight * values[i]! * values[i]!;
    }
    this.#squares = squares;
    this.slack = 1e-6 * squares + 1e-9 * plainSquares;
  }

  /** Error of the ramp that leaves its first level at position `start` and is at its second at `end`. */
  costOf(start: number, end: number): number {
    const count = this.#times.length;
    const from = this.#times[start]!;
    const length = this.#times[end]! - from;
    const weight = this.#weight[end]! - this.#weight[start]!;
    const time = this.#time[end]! - this.#time[start]!;
    const timeSquared = this.#timeSquared[end]! - this.#timeSquared[start]!;
    const value = this.#value[end]! - this.#value[start]!;
    const timeValue = this.#timeValue[end]! - this.#timeValue[start]!;
    const all = this.#weight[count]!;
    const allValue = this.#value[count]!;
    const above = all - this.#weight[end]!;
    const shares = (time - from * weight) / length + above;
    const sharesSquared = (timeSquared - from * (2 * time - from * weight)) / (length * length) + above;
    const sharesValue = (timeValue - from * value) / length + allValue - this.#value[end]!;
    const spread = sharesSquared - (shares * shares) / all;
    const slope = spread > 0 ? (sharesValue - (shares * allValue) / all) / spread : 0;
    const before = (allValue - slope * shares) / all;
    return this.#squares - before * allValue - slope * sharesValue;
  }
}
