import { clearRamp, isClear } from '../../maths/fit-ramp.ts';
import { median } from '../../maths/median.ts';
import { settings } from './settings.ts';

/** A lasting change in a daily series. Positions are days. */
export interface DayChange {
  readonly before: number;
  readonly after: number;
  /** Last day at the old level, first day at the new one. */
  readonly start: number;
  readonly end: number;
  /** First day back near the old level, or null while it lasts. */
  readonly endedOn: number | null;
  /** Robust day-to-day scatter around the fit. */
  readonly scale: number;
  /** Share of the squared variation that the change explains, 0 to 1. */
  readonly explained: number;
  /** Probability, by the days alone, that it grew over days and did not come at once. */
  readonly rampProbability: number;
}

const clarity = {
  leastScales: settings.scalesOfNoise.value,
  /** Below this the fitted scatter is held to be quantisation, not knowledge, K. */
  leastScale: 0.08,
  leastExplained: settings.explainedShare.value,
};
const shortestPrefixDays = 5;
/** With fewer than so many days before it, a change must be larger by so much for every day that lacks. */
const wantedDaysBefore = 5;
const perLackingDay = 0.2;

/** The change that the series still shows at its end, else one that came and went, else null. */
export function changeInDays(
  days: Float64Array,
  least: number = settings.minimumShift.value,
): DayChange | null {
  const lasting = changeUntil(days, days.length, least);
  if (lasting !== null && stillThere(days, lasting)) return lasting;
  return passedChange(days, least);
}

function changeUntil(days: Float64Array, length: number, leastSize: number): DayChange | null {
  const part = days.subarray(0, length);
  const ramp = clearRamp(
    part.map((_, day) => day),
    part,
    { ...clarity, leastSize },
  );
  if (ramp === null) return null;
  const before = days.subarray(0, ramp.start + 1).filter(Number.isFinite).length;
  const lacking = Math.max(0, wantedDaysBefore - before);
  if (!isClear(ramp, { ...clarity, leastSize: leastSize * (1 + perLackingDay * lacking) })) return null;
  return { ...ramp, scale: Math.max(clarity.leastScale, ramp.scale), endedOn: null };
}

function stillThere(days: Float64Array, change: DayChange): boolean {
  const last = median(lastKnown(days, 2));
  return (last - change.before) / (change.after - change.before) > 0.5;
}

function passedChange(days: Float64Array, least: number): DayChange | null {
  let best: DayChange | null = null;
  for (let cut = shortestPrefixDays; cut < days.length; cut++) {
    const change = changeUntil(days, cut, least);
    if (change === null) continue;
    const rest = median(days.subarray(cut));
    const left = (rest - change.before) / (change.after - change.before);
    if (!(left < 0.4 && left > -0.6)) continue;
    const edge = (days[cut - 1]! - change.before) / (change.after - change.before);
    if (!(edge > 0.5)) continue;
    if (best === null || change.explained >= best.explained) best = { ...change, endedOn: cut };
  }
  return best;
}

function lastKnown(days: Float64Array, count: number): number[] {
  const known: number[] = [];
  for (let day = days.length - 1; day >= 0 && known.length < count; day--) {
    if (Number.isFinite(days[day]!)) known.push(days[day]!);
  }
  return known;
}
