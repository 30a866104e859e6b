import { median } from '../../maths/median.ts';
import { medianAbsoluteDeviation, normalConsistency } from '../../maths/median-absolute-deviation.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { Phase } from '../../signals/types.ts';
import type { Kelvin } from '../../units/quantities.ts';

const fewestDaysBefore = 3;
/** Days at the end that answer for now. */
const lastDays = 5;
/** Settled samples of a day that must be known. */
const leastSamples = 12;
/** A return channel that stood nearer to the discharge air than this has no distance that could be compared. */
const leastGap: Kelvin = 0.5;

/**
 * How far the return air stands over the discharge air since the air rose, against before. That distance is the heat which the air
 * takes up in the case over what its flow carries (`Q = ṁ c ΔT`, a balance over any stretch that is long against the cycles of a
 * valve, so it is taken as the mean of a day of settled air). What comes in at a door makes it grow, less air over the coil as well; over a coil
 * that gets too little liquid the case takes up what it did, or less as it is warmer. Nothing where no return air is logged; the feature is the
 * natural logarithm of the ratio, as twice and half are the same step.
 *
 * @param startDay the day on which the rise began
 */
export function returnGap(signals: CircuitSignals, startDay: number): { [feature: string]: number } {
  const { days } = signals.log.calendar;
  const gaps = dailyGaps(signals);
  const before = gaps.subarray(0, startDay + 1).filter(Number.isFinite);
  const now = gaps.subarray(Math.max(startDay + 2, days.length - lastDays)).filter(Number.isFinite);
  const usual = median(before);
  if (before.length < fewestDaysBefore || now.length === 0 || !(usual >= leastGap)) return {};
  const scatter = (normalConsistency * medianAbsoluteDeviation(before)) / usual;
  return {
    returnGapLog: Math.log(Math.max(leastGap, median(now)) / usual),
    returnGapLogError: scatter / Math.sqrt(Math.min(before.length, now.length)),
  };
}

/** Daily mean of (return air − discharge air) over settled samples, K; NaN where too few are known. */
function dailyGaps({ circuit, air, phase, log }: CircuitSignals): Float64Array {
  const { returnAir } = circuit;
  return Float64Array.from(returnAir.length === 0 ? [] : log.calendar.days, ({ from, to }) => {
    let sum = 0;
    let count = 0;
    for (const { values } of returnAir) {
      for (let i = from; i < to; i++) {
        const gap = phase[i] === Phase.cooling ? values[i]! - air[i]! : Number.NaN;
        if (Number.isNaN(gap)) continue;
        sum += gap;
        count++;
      }
    }
    return count < leastSamples ? Number.NaN : sum / count;
  });
}
