import { mean } from '../maths/mean.ts';
import { median } from '../maths/median.ts';
import { sampleStandardDeviation } from '../maths/sample-standard-deviation.ts';
import { stepMinutes } from '../model/grid.ts';
import type { CircuitSignals, DefrostWindow } from '../signals/types.ts';

const fewestDefrosts = 4;
/** Days at the end whose defrosts answer for now. */
const lastDays = 5;
/** The fastest rise is over five minutes: logged more coarsely it is something else. */
const coarsest = 5;
/** Defrosts of which fewer than this share ended at their one longest time end by temperature. */
const endedByTheClock = 0.5;

/**
 * How the circuit's defrosts answer since its air rose, against those before. A coil that lacks air stays cold and laden: it
 * lets the air rise slowly, and where a temperature ends the defrost it takes longer. One that lacks refrigerant is nearly as warm
 * as the air and carries less frost: the air rises about as fast as ever, and the defrost ends sooner. Only the features that can be
 * told; the ratio of the rates with its standard error.
 *
 * @param startDay the day on which the rise began
 */
export function defrostAnswer(signals: CircuitSignals, startDay: number): { [feature: string]: number } {
  const { days } = signals.log.calendar;
  const start = days[startDay]!.from;
  const since = days[Math.max(startDay + 1, days.length - lastDays)]?.from ?? days.at(-1)!.to;
  const before = signals.defrosts.filter(({ complete, to }) => complete && to <= start);
  const now = signals.defrosts.filter(({ complete, from }) => complete && from >= since);
  if (before.length < fewestDefrosts || now.length < fewestDefrosts) return {};
  return {
    ...(stepMinutes(signals.log.grid) <= coarsest ? rateRatio(signals, before, now) : {}),
    ...(signals.defrostSource === 'status' ? lengthRatio(before, now) : {}),
  };
}

function rateRatio(
  { usable }: CircuitSignals,
  before: readonly DefrostWindow[],
  now: readonly DefrostWindow[],
): { [feature: string]: number } {
  const rates = (windows: readonly DefrostWindow[]): number[] =>
    windows
      .map(({ probes }) => mean(probes.filter((_, i) => usable[i]).map(({ riseRate }) => riseRate)))
      .filter(Number.isFinite);
  const usual = rates(before);
  const last = rates(now);
  const riseRateRatio = mean(last) / mean(usual);
  if (!Number.isFinite(riseRateRatio)) return {};
  const relative = (rates: readonly number[]): number =>
    sampleStandardDeviation(rates) / mean(rates) / Math.sqrt(rates.length);
  return {
    riseRateRatio,
    riseRateRatioError: riseRateRatio * Math.hypot(relative(usual), relative(last)),
  };
}

function lengthRatio(
  before: readonly DefrostWindow[],
  now: readonly DefrostWindow[],
): { [feature: string]: number } {
  const lengths = before.map(({ from, to }) => to - from);
  const longest = Math.max(...lengths);
  if (lengths.filter((length) => length >= longest - 1).length > endedByTheClock * lengths.length) return {};
  return { defrostLengthRatio: median(now.map(({ from, to }) => to - from)) / median(lengths) };
}
