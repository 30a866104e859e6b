import type { Calendar, Grid } from '../model/grid.ts';
import { samplesIn } from '../model/grid.ts';
import type { Kelvin } from '../units/quantities.ts';
import { BinnedValues } from './binned-values.ts';

const bin: Kelvin = 0.02;

/**
 * Robust cycle amplitude of each day, K: p90 − p10 of what settled air deviates from its mean over the hour around it.
 * NaN on days without a level.
 *
 * @param flags one a sample, 0 outside settled air
 * @param level one a day
 */
export function dailySwings(
  values: Float64Array,
  flags: Uint8Array,
  level: Float64Array,
  grid: Grid,
  calendar: Calendar,
): Float64Array {
  const hour = new HourAround(values, flags, samplesIn(grid, 30));
  const bins = new BinnedValues(bin, -20, 20);
  const deviation = new Float64Array(Math.max(0, ...calendar.days.map(({ from, to }) => to - from)));
  return Float64Array.from(calendar.days, ({ from, to }, d) => {
    hour.deviations(from, to, deviation);
    if (Number.isNaN(level[d]!)) return Number.NaN;
    bins.clear();
    bins.addKnown(deviation, 0, to - from);
    return bins.quantile(0.9) - bins.quantile(0.1);
  });
}

/** The settled values within `reach` samples either side of the one that is looked at, from the first of the record on. */
class HourAround {
  readonly #values: Float64Array;
  readonly #flags: Uint8Array;
  readonly #reach: number;
  #sum = 0;
  #known = 0;

  constructor(values: Float64Array, flags: Uint8Array, reach: number) {
    this.#values = values;
    this.#flags = flags;
    this.#reach = reach;
    for (let i = 0; i < Math.min(reach, values.length); i++) {
      if (flags[i] === 0 || Number.isNaN(values[i]!)) continue;
      this.#sum += values[i]!;
      this.#known++;
    }
  }

  /**
   * Each settled value less the mean of those around it, NaN where fewer than half of these are known, into the front of
   * `deviation`. Asked for one stretch after the other.
   */
  deviations(from: number, to: number, deviation: Float64Array): void {
    const values = this.#values;
    const flags = this.#flags;
    const reach = this.#reach;
    const count = values.length;
    let sum = this.#sum;
    let known = this.#known;
    let share = 1 / known;
    for (let i = from; i < to; i++) {
      const before = known;
      const entering = i + reach;
      if (entering < count && flags[entering] !== 0 && !Number.isNaN(values[entering]!)) {
        sum += values[entering]!;
        known++;
      }
      const leaving = i - reach - 1;
      if (leaving >= 0 && flags[leaving] !== 0 && !Number.isNaN(values[leaving]!)) {
        sum -= values[leaving]!;
        known--;
      }
      if (known !== before) share = 1 / known;
      deviation[i - from] = known > reach && flags[i] !== 0 ? values[i]! - sum * share : Number.NaN;
    }
    this.#sum = sum;
    this.#known = known;
  }
}
