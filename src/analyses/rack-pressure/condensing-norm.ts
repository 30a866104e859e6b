import { median } from '../../maths/median.ts';
import { quantile } from '../../maths/quantile.ts';
import { robustRegression } from '../../maths/robust-regression.ts';
import { settings } from './settings.ts';

/** Hourly means over the log; NaN where not known. */
export interface CondensingHours {
  /** Saturated condensing temperature, Celsius. */
  readonly condensing: Float64Array;
  readonly outdoor: Float64Array;
  /** Machines that run, on the mean of the hour; null where none is logged. */
  readonly running: Float64Array | null;
}

export interface CondensingNorm {
  /** What the condensing temperature of an hour is by the norm. */
  readonly at: (hour: number) => number;
  /** What it would be without its floor. */
  readonly line: (hour: number) => number;
}

/** Hours off the floor that teach how far above the outdoor air a condenser stands, with a slope of 1. */
const fewestHours = 6;
/** Hours that teach a slope of its own on outdoor or on the machines, and how far these must have spread. */
const fewestForSlopes = 72;
const leastOutdoorSpread = 4;
const leastRunningSpread = 0.7;
/** So far above its lowest the condensing temperature is not held by its floor, K. */
const offTheFloor = 1;
/** A condenser follows the weather by no more than so much, kelvin a kelvin. */
const steepest = 1.3;

/**
 * What the condensing temperature is at each hour by the norm of the first `normHours`: never under its floor (their
 * lower twentieth), else `a + b · outdoor + c · running machines`, fitted by Huber's regression to the hours off the floor. At
 * constant airflow a condenser stands above the outdoor air in proportion to the heat it rejects (ε–NTU: Q = ε C (T_c − T_o);
 * ASHRAE Handbook, HVAC Systems and Equipment, Condensers, from memory), hence c; fans that are staged make b less than 1. Where the
 * hours do not spread enough to teach a slope, b is 1 and c is left out. A first third on the floor still tells that in the
 * warmest weather of its hours the condenser could have stood at the floor: a is at most their distance, and at most the
 * difference of common practice, which a scale that has no zero (`hasZero` false) cannot know. So it is taken where the hours off the
 * floor are few and fewer than those on it in weather as warm: then they are no habit, but may be the first of a fault. Beyond the
 * hottest hour that was learnt it goes on at no less than a kelvin a kelvin. Null without an outdoor temperature.
 */
export function condensingNorm(
  { condensing, outdoor, running }: CondensingHours,
  normHours: number,
  hasZero = true,
): CondensingNorm | null {
  if (!outdoor.some(Number.isFinite)) return null;
  const floor = quantile(condensing.subarray(0, normHours), 0.05);
  const learnt: number[] = [];
  const onFloor: number[] = [];
  for (let hour = 0; hour < normHours; hour++) {
    if (!Number.isFinite(outdoor[hour]!)) continue;
    if (condensing[hour]! > floor + offTheFloor) learnt.push(hour);
    else if (condensing[hour]! <= floor + offTheFloor) onFloor.push(hour);
  }
  const at = (values: Float64Array): Float64Array => Float64Array.from(learnt, (hour) => values[hour]!);
  const usualOff = median(at(outdoor));
  const asWarmOnFloor = onFloor.filter((hour) => outdoor[hour]! >= usualOff).length;
  const isHabit = learnt.length >= fewestForSlopes || asWarmOnFloor <= learnt.length;
  if (learnt.length < fewestHours || !isHabit) {
    const warmestOnFloor = Math.max(...onFloor.map((hour) => outdoor[hour]!));
    const most = floor + offTheFloor - warmestOnFloor;
    const difference = hasZero ? Math.min(settings.condensingDifference.value, most) : most;
    return Number.isFinite(difference) ? heldBy(floor, (hour) => outdoor[hour]! + difference) : null;
  }
  const line = slopesOf(at(condensing), at(outdoor), running === null ? null : at(running));
  const usualRunning = running === null ? 0 : median(at(running));
  const hottest = Math.max(...at(outdoor));
  return heldBy(floor, (hour) => {
    const beyond = Math.max(0, outdoor[hour]! - hottest) * Math.max(0, 1 - line.outdoor);
    const machines = running?.[hour] ?? Number.NaN;
    const load = line.running * ((Number.isFinite(machines) ? machines : usualRunning) - usualRunning);
    return line.level + line.outdoor * outdoor[hour]! + load + beyond;
  });
}

function heldBy(floor: number, line: (hour: number) => number): CondensingNorm {
  return { at: (hour) => Math.max(floor, line(hour)), line };
}

interface Slopes {
  /** At outdoor 0 °C and the usual number of machines. */
  readonly level: number;
  readonly outdoor: number;
  readonly running: number;
}

/** The slopes that the hours can teach and that a condenser can have; the others at 1 and 0. */
function slopesOf(condensing: Float64Array, outdoor: Float64Array, running: Float64Array | null): Slopes {
  const ones = new Float64Array(condensing.length).fill(1);
  const enough = condensing.length >= fewestForSlopes;
  const canOutdoor = enough && spread(outdoor) >= leastOutdoorSpread;
  const known = running?.every(Number.isFinite) === true;
  const usual = known ? median(running) : 0;
  const load =
    enough && known && spread(running) >= leastRunningSpread ? running.map((n) => n - usual) : null;
  for (const [withOutdoor, withLoad] of [
    [canOutdoor, load],
    [canOutdoor, null],
    [false, load],
  ] as const) {
    if (!withOutdoor && withLoad === null) continue;
    const over = withOutdoor ? condensing : condensing.map((value, i) => value - outdoor[i]!);
    const columns = [ones, ...(withOutdoor ? [outdoor] : []), ...(withLoad === null ? [] : [withLoad])];
    const { coefficients } = robustRegression(columns, over);
    const found = {
      level: coefficients[0]!,
      outdoor: withOutdoor ? coefficients[1]! : 1,
      running: withLoad === null ? 0 : coefficients.at(-1)!,
    };
    if (found.outdoor >= 0 && found.outdoor <= steepest && found.running >= 0) return found;
  }
  return { level: median(condensing.map((value, i) => value - outdoor[i]!)), outdoor: 1, running: 0 };
}

function spread(values: Float64Array): number {
  return quantile(values, 0.9) - quantile(values, 0.1);
}
