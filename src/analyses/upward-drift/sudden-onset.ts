import type { Ramp } from '../../maths/fit-ramp.ts';
import { median } from '../../maths/median.ts';
import { samplesIn } from '../../model/grid.ts';
import { runThreshold } from '../../signals/run-threshold.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { Phase } from '../../signals/types.ts';
import type { Kelvin } from '../../units/quantities.ts';

/** A ramp of more days than this did not begin within hours. */
const mostDays = 4;
const fewestDaysBefore = 4;
const dayHours = 24;
/** What came at once stands there for so many hours, and did not in the hours just before, nor at that time of the day before. */
const sinceHours = 6;
const justBefore = 3;
/** … and stands at half of that in so much of the day that follows: what goes by night came by day. */
const stayShare = 0.8;
/** Air that came: at least so far, and by this share of the whole rise; by more of it where no valve bears witness. */
const leastAir: Kelvin = 0.8;
const airShare = 0.3;
const airShareAlone = 0.6;
/** Air that is not there: under this share of that. */
const absentShare = 0.35;
/** More feeding that came, and none that was there before. */
const moreFeeding = 0.25;
const usualFeeding = 0.1;

/**
 * The sample at which a rise that the daily levels spread over days began at once; null where it did not. A door that is
 * left open, or a valve that fails, shows within the hour; frost that follows goes on for days, and a daily median that is warm by
 * day and less so by night climbs as long. Hours of the air, and of the valve where one is logged that could feed more than it did, are held
 * against the same hours of the days before.
 *
 * @param size rise of the daily level
 */
export function suddenOnset(signals: CircuitSignals, ramp: Ramp, size: Kelvin): number | null {
  const { circuit, air, log } = signals;
  if (ramp.end - ramp.start > mostDays || ramp.start + 1 < fewestDaysBefore) return null;
  const { days } = log.calendar;
  const hour = samplesIn(log.grid, 60);
  const starts = days.map(({ from }) => Math.round(from / hour));
  const first = starts[Math.max(0, ramp.start - 1)]!;
  const until = Math.round(days[Math.min(days.length - 1, ramp.end + 1)]!.to / hour);
  const threshold = circuit.valve === null ? 0 : runThreshold(circuit.valve);
  const valve = circuit.valve?.values.map((value) =>
    Number.isNaN(value) ? value : value > threshold ? 1 : 0,
  );
  const usualOf = (values: Float64Array): readonly number[] =>
    Array.from({ length: dayHours }, (_, of) =>
      median(starts.slice(0, ramp.start).map((from) => settledMean(values, signals, from + of, hour))),
    );
  const over = (values: Float64Array, usual: readonly number[]): readonly number[] =>
    Array.from({ length: until - first }, (_, k) => {
      return settledMean(values, signals, first + k, hour) - usual[k % dayHours]!;
    });
  const warmth = over(air, usualOf(air));
  const fed = valve === undefined ? null : usualOf(valve);
  const feeding = fed === null || median(fed) > 1 - moreFeeding ? null : over(valve!, fed);
  const there = Math.max(leastAir, (feeding === null ? airShareAlone : airShare) * size);
  for (let k = dayHours; k + sinceHours <= warmth.length; k++) {
    const came = cameAt(warmth, k, there, absentShare * there);
    if (came && (feeding === null || cameAt(feeding, k, moreFeeding, usualFeeding)))
      return (first + k) * hour;
  }
  return null;
}

/** From hour `k` on for six hours, by night as well, and neither just before nor a day before. */
function cameAt(hours: readonly number[], k: number, there: number, absent: number): boolean {
  const level = (from: number, count: number) =>
    median(hours.slice(from, from + count).filter(Number.isFinite));
  return (
    hours[k]! >= there / 2 &&
    level(k, sinceHours) >= there &&
    staysFor(hours.slice(k, k + dayHours), there / 2) &&
    level(k - justBefore, justBefore) <= absent &&
    level(k - dayHours, sinceHours) <= absent
  );
}

/** In most hours of the day that follows. */
function staysFor(hours: readonly number[], least: number): boolean {
  const known = hours.filter(Number.isFinite);
  return known.filter((value) => value >= least).length >= stayShare * known.length;
}

/** Mean over the settled samples of an hour; NaN where less than a quarter of it is known. */
function settledMean(values: Float64Array, { phase }: CircuitSignals, k: number, hour: number): number {
  let sum = 0;
  let known = 0;
  for (let i = k * hour; i < Math.min(values.length, (k + 1) * hour); i++) {
    if (phase[i] !== Phase.cooling || Number.isNaN(values[i]!)) continue;
    sum += values[i]!;
    known++;
  }
  return 4 * known > hour ? sum / known : Number.NaN;
}
