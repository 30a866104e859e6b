import type { Grid } from '../model/grid.ts';
import { stepMinutes } from '../model/grid.ts';
import { Phase } from '../signals/types.ts';
import type { Celsius, Kelvin, Minutes } from '../units/quantities.ts';

/** Samples `from` (inclusive) to `to` (exclusive). */
export interface SampleRange {
  readonly from: number;
  readonly to: number;
}

/** An unbroken run of readings above the limit; a missing reading ends it. */
export interface Episode extends SampleRange {
  readonly minutes: Minutes;
  readonly peak: Celsius;
}

/** What one probe's air was above a limit. Every reading stands for one grid step. */
export interface Exposure {
  readonly limit: Celsius;
  readonly knownMinutes: Minutes;
  /** Nothing logged: neither above nor below. */
  readonly unknownMinutes: Minutes;
  readonly aboveMinutes: Minutes;
  /** Of `aboveMinutes`, those in settled air, in defrost, and in the recovery after one. */
  readonly settledMinutes: Minutes;
  readonly defrostMinutes: Minutes;
  readonly recoveryMinutes: Minutes;
  /** Σ (air − limit) over the readings above it, in kelvin hours. */
  readonly kelvinHours: number;
  readonly longest: Episode | null;
}

/** Linear in the samples of the range. A reading equal to the limit is not above it. */
export function exposureAbove(
  values: Float64Array,
  phase: Uint8Array,
  limit: Celsius,
  grid: Grid,
  range: SampleRange = { from: 0, to: grid.count },
): Exposure {
  const samples = { known: 0, above: 0, settled: 0, defrost: 0, recovery: 0 };
  let kelvins: Kelvin = 0;
  let longest = { from: 0, to: 0, peak: Number.NEGATIVE_INFINITY };
  let from = -1;
  let peak = Number.NEGATIVE_INFINITY;
  for (let i = range.from; i <= range.to; i++) {
    const value = i < range.to ? values[i]! : Number.NaN;
    if (!Number.isNaN(value)) samples.known++;
    if (value > limit) {
      samples.above++;
      kelvins += value - limit;
      if (phase[i] === Phase.cooling) samples.settled++;
      else if (phase[i] === Phase.defrost) samples.defrost++;
      else if (phase[i] === Phase.recovery) samples.recovery++;
      if (from < 0) {
        from = i;
        peak = value;
      } else if (value > peak) peak = value;
    } else if (from >= 0) {
      if (i - from > longest.to - longest.from) longest = { from, to: i, peak };
      from = -1;
    }
  }
  const step = stepMinutes(grid);
  const episodeSamples = longest.to - longest.from;
  return {
    limit,
    knownMinutes: samples.known * step,
    unknownMinutes: (range.to - range.from - samples.known) * step,
    aboveMinutes: samples.above * step,
    settledMinutes: samples.settled * step,
    defrostMinutes: samples.defrost * step,
    recoveryMinutes: samples.recovery * step,
    kelvinHours: (kelvins * step) / 60,
    longest: episodeSamples > 0 ? { ...longest, minutes: episodeSamples * step } : null,
  };
}
