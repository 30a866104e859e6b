import type { Point } from '../points/point.ts';

const stepMs = 5 * 60_000;
const daysRead = 5;
const dayMs = 86_400_000;
/** Slower movements (day and night, weather, drift) are common to all and say nothing of the circuit. */
const slowerThanSamples = 36;
const oldestReadingMs = 40 * 60_000;

/** What columns do from one five minutes to the next: each an array over one common time axis. */
export class Movements {
  readonly #startMs: number;
  readonly #count: number;
  readonly #levels = new Map<Point, Float64Array>();
  readonly #quick = new Map<Point, Float64Array>();

  constructor(points: readonly Point[]) {
    const filled = points.filter((point) => point.times.length > 1);
    const starts = filled.map((point) => point.times[0]!).sort((a, b) => a - b);
    const ends = filled.map((point) => point.times.at(-1)!).sort((a, b) => a - b);
    this.#startMs = Math.ceil((starts[starts.length >> 1] ?? 0) / stepMs) * stepMs;
    const lasts = (ends[ends.length >> 1] ?? 0) - this.#startMs;
    this.#count = Math.max(0, Math.floor(Math.min(lasts, daysRead * dayMs) / stepMs));
  }

  /** The value at each step, NaN where the last reading is too old. */
  level(point: Point): Float64Array {
    const known = this.#levels.get(point) ?? this.#resampled(point);
    this.#levels.set(point, known);
    return known;
  }

  /** The same less its running mean of three hours, 0 where unknown, scaled to length 1; all 0 for a constant. */
  quick(point: Point): Float64Array {
    const known = this.#quick.get(point) ?? normalised(highPassed(this.level(point)));
    this.#quick.set(point, known);
    return known;
  }

  /** Correlation of the quick movements of two columns, −1 to 1. */
  together(a: Point, b: Point): number {
    return product(this.quick(a), this.quick(b));
  }

  #resampled({ times, values, logging }: Point): Float64Array {
    const level = new Float64Array(this.#count).fill(Number.NaN);
    let row = 0;
    let heldValue = Number.NaN;
    let heldTime = Number.NEGATIVE_INFINITY;
    for (let sample = 0; sample < level.length; sample++) {
      const now = this.#startMs + sample * stepMs;
      while (row < times.length && times[row]! <= now) {
        if (!Number.isNaN(values[row]!)) {
          heldValue = values[row]!;
          heldTime = times[row]!;
        }
        row++;
      }
      if (logging === 'change-of-value' || now - heldTime < oldestReadingMs) level[sample] = heldValue;
    }
    return level;
  }
}

function highPassed(level: Float64Array): Float64Array {
  const quick = new Float64Array(level.length);
  const half = slowerThanSamples / 2;
  let sum = 0;
  let count = 0;
  const add = (index: number, sign: number): void => {
    const value = level[index];
    if (value === undefined || Number.isNaN(value)) return;
    sum += sign * value;
    count += sign;
  };
  for (let index = 0; index < half && index < level.length; index++) add(index, 1);
  for (let index = 0; index < level.length; index++) {
    add(index + half, 1);
    add(index - half - 1, -1);
    const value = level[index]!;
    quick[index] = Number.isNaN(value) || count === 0 ? 0 : value - sum / count;
  }
  return quick;
}

/** Without its mean, and of length 1. */
export function normalised(series: Float64Array): Float64Array {
  const mean = series.reduce((sum, value) => sum + value, 0) / Math.max(1, series.length);
  const length = Math.sqrt(series.reduce((sum, value) => sum + (value - mean) ** 2, 0));
  if (!(length > 1e-9)) return new Float64Array(series.length);
  return series.map((value) => (value - mean) / length);
}

export function product(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let index = 0; index < a.length; index++) sum += a[index]! * b[index]!;
  return sum;
}
