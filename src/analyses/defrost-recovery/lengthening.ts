import { autocorrelation } from '../../maths/autocorrelation.ts';
import { autocorrelationVarianceFactor } from '../../maths/autocorrelation-variance-factor.ts';
import { mannKendall } from '../../maths/mann-kendall.ts';
import { median } from '../../maths/median.ts';
import { theilSenSlope } from '../../maths/theil-sen-slope.ts';
import type { Evidence } from '../../model/evidence.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import type { Minutes } from '../../units/quantities.ts';
import { measure } from '../evidence-parts.ts';
import { evidenceOf } from './evidence.ts';
import { settings } from './settings.ts';

const fewestDays = 8;
/** Recoveries are read to the logging step; a minute is added before the logarithm so that none is 0. */
const smallest: Minutes = 1;

interface Trend {
  readonly first: Minutes;
  readonly last: Minutes;
  /** Share by which a day's recovery is longer than the day before's, with its interval. */
  readonly perDay: number;
  readonly low: number;
  readonly high: number;
  readonly p: number;
  readonly onsetDay: number;
}

/**
 * Recovery that lengthens: Theil–Sen line through the logarithms of the daily medians, at least 30 % and 10 minutes
 * over the history, with the one-sided Mann–Kendall probability corrected for serial correlation. Whole circuit
 * first (the median of its probes), then single probes.
 */
export function lengthening(signals: CircuitSignals): Evidence[] {
  const days = signals.log.calendar.days.map((_, day) => day);
  const usable = signals.probes.filter((_, i) => signals.usable[i]);
  const whole = Float64Array.from(days, (day) => median(usable.map((probe) => probe.recovery[day]!)));
  const common = trendOf(whole);
  if (common !== null) return [asEvidence(signals, common, null)];
  if (usable.length < 2) return [];
  return signals.probes.flatMap((probe, i) => {
    const trend = signals.usable[i] ? trendOf(probe.recovery) : null;
    return trend === null ? [] : [asEvidence(signals, trend, i)];
  });
}

function trendOf(recovery: Float64Array): Trend | null {
  const known: { day: number; logMinutes: number }[] = [];
  recovery.forEach((minutes, day) => {
    if (Number.isFinite(minutes)) known.push({ day, logMinutes: Math.log(minutes + smallest) });
  });
  if (known.length < fewestDays) return null;
  const days = known.map((one) => one.day);
  const logs = known.map((one) => one.logMinutes);
  const { slope, low, high, intercept } = theilSenSlope(days, logs, { confidence: 0.9 });
  const first = Math.exp(intercept + slope * days[0]!) - smallest;
  const last = Math.exp(intercept + slope * days.at(-1)!) - smallest;
  const residuals = logs.map((value, i) => value - intercept - slope * days[i]!);
  const factor = autocorrelationVarianceFactor(known.length, autocorrelation(residuals, 1));
  const p = mannKendall(logs, factor).increasing;
  const recent = median(recovery.subarray(-3));
  const early = median(known.slice(0, fewestDays / 2).map((one) => Math.exp(one.logMinutes) - smallest));
  const isLonger =
    last > (1 + settings.lengtheningShare.value) * first &&
    last - first > settings.slowMinutes.value &&
    !(recent < early + settings.slowMinutes.value);
  if (!isLonger || !(p < settings.significance.value)) return null;
  return {
    first,
    last,
    perDay: Math.expm1(slope),
    low: Math.expm1(low),
    high: Math.expm1(high),
    p,
    onsetDay: onsetOf(known, early),
  };
}

/** The last day whose neighbourhood had not yet made a quarter of the lengthening. */
function onsetOf(known: readonly { day: number; logMinutes: number }[], early: Minutes): number {
  const latest = median(known.slice(-3).map((one) => Math.exp(one.logMinutes) - smallest));
  const quarter = early + (latest - early) / 4;
  let onset = known[0]!.day;
  for (let i = known.length - 1; i >= 1; i--) {
    const around = known.slice(Math.max(0, i - 1), i + 2).map((one) => Math.exp(one.logMinutes) - smallest);
    if (median(around) <= quarter) {
      onset = known[i]!.day;
      break;
    }
  }
  return onset;
}

function asEvidence(signals: CircuitSignals, trend: Trend, probe: number | null): Evidence {
  const ratio = trend.last / Math.max(smallest, trend.first);
  return evidenceOf(signals, {
    shape: 'lengthening',
    probe,
    from: signals.log.calendar.days[trend.onsetDay]!.from,
    certainty: 1 - 4 * trend.p - (ratio < 1.5 ? 0.15 : 0),
    measures: [
      measure('recoveryAtStart', trend.first, 'min'),
      measure('recoveryNow', trend.last, 'min'),
      {
        name: 'lengthening',
        value: 100 * trend.perDay,
        low: 100 * trend.low,
        high: 100 * trend.high,
        unit: '%/d',
      },
    ],
    features: { recoveryRatio: ratio, recoveryRise: trend.last - trend.first, trendProbability: trend.p },
  });
}
