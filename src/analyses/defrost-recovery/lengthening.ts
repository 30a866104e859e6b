import { autocorrelation } from '../../maths/autocorrelation.ts';
import { autocorrelationVarianceFactor } from '../../maths/autocorrelation-variance-factor.ts';
import { fitRamp, isClear } from '../../maths/fit-ramp.ts';
import { mannKendall } from '../../maths/mann-kendall.ts';
import { median } from '../../maths/median.ts';
import { theilSenSlope } from '../../maths/theil-sen-slope.ts';
import type { Evidence, Measure } from '../../model/evidence.ts';
import { stepMinutes } from '../../model/grid.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import type { Minutes } from '../../units/quantities.ts';
import { measure } from '../evidence-parts.ts';
import { evidenceOf } from './evidence.ts';
import { settings } from './settings.ts';

const fewestDays = 8;
/** Recoveries are read to the logging step; a minute is added before the logarithm so that none is 0. */
const smallest: Minutes = 1;
/** One logging step is how a recovery is read: a longer one lengthened by more than so many. */
const plainSteps = 1.2;
/**
 * A change within days that explains most of what they scattered: the trend test, corrected for serial correlation, takes
 * the two levels for the one.
 */
const clarity = {
  leastSize: Math.log1p(settings.lengtheningShare.value),
  leastScales: 5,
  leastScale: 0.1,
  leastExplained: 0.6,
};

/** The recoveries at the start and of late are medians of so many days at least: a line may start where none was seen. */
const seenDays = 3;

interface Trend {
  readonly first: Minutes;
  readonly last: Minutes;
  /** Share by which a day's recovery is longer than the day before's, with its interval. */
  readonly perDay: number;
  readonly low: number;
  readonly high: number;
  readonly p: number;
  /** By the test of a trend; else it is longer since some day, and grows no further. */
  readonly grows: boolean;
  /** Share of its variation that the change explains. */
  readonly explained: number;
  readonly onsetDay: number;
}

/**
 * Recovery that lengthens: Theil–Sen line through the logarithms of the daily medians, and the one-sided Mann–Kendall
 * probability corrected for serial correlation. Whole circuit first (the median of its probes), then single probes,
 * which have to lengthen more and share the significance among them (Bonferroni).
 */
export function lengthening(signals: CircuitSignals): Evidence[] {
  const days = signals.log.calendar.days.map((_, day) => day);
  const step = plainSteps * stepMinutes(signals.log.grid);
  const usable = signals.probes.filter((_, i) => signals.usable[i]);
  const whole = Float64Array.from(days, (day) => median(usable.map((probe) => probe.recovery[day]!)));
  const common = trendOf(whole, Math.max(step, settings.trendMinutes.value), settings.significance.value);
  if (common !== null) return [asEvidence(signals, common, null)];
  if (usable.length < 2) return [];
  const ofEach = settings.significance.value / usable.length;
  return signals.probes.flatMap((probe, i) => {
    const least = Math.max(step, settings.slowMinutes.value);
    const trend = signals.usable[i] ? trendOf(probe.recovery, least, ofEach) : null;
    return trend === null ? [] : [asEvidence(signals, trend, i)];
  });
}

function trendOf(recovery: Float64Array, leastMinutes: Minutes, significance: number): Trend | null {
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
  const isMuchLonger = last > (1 + settings.lengtheningShare.value) * first;
  if (!isMuchLonger || !(last - first > leastMinutes)) return null;
  const residuals = logs.map((value, i) => value - intercept - slope * days[i]!);
  const factor = autocorrelationVarianceFactor(known.length, autocorrelation(residuals, 1));
  const p = mannKendall(logs, factor).increasing;
  const ramp = fitRamp(days, logs);
  if (ramp === null) return null;
  const before = Math.exp(median(logs.slice(0, Math.max(seenDays, ramp.start + 1)))) - smallest;
  const now = Math.exp(median(logs.slice(-seenDays))) - smallest;
  const scatter = Math.expm1(ramp.scale) * before;
  const least = Math.max(leastMinutes, settings.trendScales.value * scatter);
  const isLonger = [last - first, now - before].every((minutes) => minutes > least);
  const grows = p < significance;
  if (!isLonger || !(grows || isClear(ramp, clarity))) return null;
  const interval = { low: Math.expm1(low), high: Math.expm1(high) };
  return {
    first: before,
    last: now,
    perDay: Math.expm1(slope),
    ...interval,
    p,
    grows,
    explained: ramp.explained,
    onsetDay: days[ramp.start]!,
  };
}

function asEvidence(signals: CircuitSignals, trend: Trend, probe: number | null): Evidence {
  const ratio = trend.last / Math.max(smallest, trend.first);
  return evidenceOf(signals, {
    shape: 'lengthening',
    probe,
    from: signals.log.calendar.days[trend.onsetDay]!.from,
    certainty: (trend.grows ? 1 - 4 * trend.p : trend.explained) - (ratio < 1.5 ? 0.15 : 0),
    measures: [
      measure('recoveryAtStart', trend.first, 'min'),
      measure('recoveryNow', trend.last, 'min'),
      ...(trend.grows ? [growth(trend)] : []),
    ],
    features: {
      recoveryRatio: ratio,
      recoveryRise: trend.last - trend.first,
      trendProbability: trend.p,
      grows: trend.grows ? 1 : 0,
    },
  });
}

function growth({ perDay, low, high }: Trend): Measure {
  return { name: 'lengthening', value: 100 * perDay, low: 100 * low, high: 100 * high, unit: '%/d' };
}
