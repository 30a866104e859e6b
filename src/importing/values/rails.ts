import type { ExportUnit } from '../../units/export-units.ts';
import { type ColumnProfile, scaleEnds } from './column-profile.ts';

/** What counts as an impossible reading and as an error code: common practice, no source. */
export const railSettings = {
  /** Range of air, coil and product temperatures in °F outside which a constant is no reading. */
  lowestDegF: -60,
  highestDegF: 130,
  /** A level apart from the rest by this many times their spread, entered and left in one step, is no reading. */
  apart: 1,
  /** A level is entered and left by steps of at least this. */
  shortestStep: 5,
  /** Readings of one value that make it a level. */
  levelReadings: 3,
  /** The rest must take this many values, or a level apart may be a changed set point or an off state. */
  restValues: 12,
} as const;

/**
 * Numbers that loggers write for a broken or missing probe: ends of 8, 16 and 32-bit scales with their decimals,
 * rows of nines, the power-on value of a common digital probe. They need behaviour as well to be rejected.
 */
const errorCodes = new Set([
  -40, 85, 185, 327.67, -327.68, 3276.7, -3276.8, 32767, -32768, 32766, 65535, 655.35, 6553.5, 2147483647,
  -2147483648, 99.9, -99.9, 999, -999, 999.9, -999.9, 9999, -9999, 99999, -99999, 999999, -999999, 888.8,
  -888, -127, -196.6, 850, -200, -99, -88.8, 1e6, -1e6, -6999, 7999, 1e9, -1e9,
]);

export interface Rails {
  /** Values that are no readings. */
  readonly values: ReadonlySet<number>;
  /** True where nothing else is in the column. */
  readonly notConnected: boolean;
}

const none: Rails = { values: new Set(), notConnected: false };
const mostPeeled = 4;

/** Kelvins of a temperature stand far above this. Those of a superheat stand below it and are a difference, which may well be 0. */
const leastAbsoluteK = 100;

/** The constants at the ends of a column's numbers that behave as a broken or missing probe does. */
export function findRails(values: Float64Array, profile: ColumnProfile, stated: ExportUnit | null): Rails {
  if (profile.readings === 0 || !mayHaveRails(values, profile, stated)) return none;
  const sorted = sortedNumbers(values);
  const unit = stated === 'K' && sorted[sorted.length >> 1]! < leastAbsoluteK ? null : stated;
  const found = new Set<number>();
  let from = 0;
  let to = sorted.length;
  for (let peeled = 0; peeled < 2 * mostPeeled && from < to; peeled++) {
    const low = sorted[from]!;
    const high = sorted[to - 1]!;
    const lowEnd = firstAbove(sorted, from, to, low);
    const highStart = firstAtLeast(sorted, from, to, high);
    if (low === high) {
      if (isImpossible(low, unit) || isConstantCode(low, unit) || (found.size > 0 && errorCodes.has(low)))
        found.add(low);
      if (found.has(low)) from = to;
      break;
    }
    if (isRail(low, lowEnd - from, sorted, lowEnd, to, unit)) {
      found.add(low);
      from = lowEnd;
    } else if (isRail(high, to - highStart, sorted, from, highStart, unit)) {
      found.add(high);
      to = highStart;
    } else break;
  }
  if (from < to && allImpossible(sorted, from, to)) {
    for (let at = from; at < to; at++) found.add(sorted[at]!);
    return { values: found, notConnected: true };
  }
  return { values: found, notConnected: from >= to };
}

/** A look at the steps and the ends before anything is sorted: a rail is entered by a long step, or is all there is. */
function mayHaveRails(values: Float64Array, profile: ColumnProfile, unit: ExportUnit | null): boolean {
  const { min, max, largestStep } = profile;
  const { levelReadings, apart, shortestStep } = railSettings;
  if (min === max || max < -9000) return errorCodes.has(min) || isImpossible(min, unit) || max < -9000;
  if (largestStep < shortestStep) return isImpossible(min, unit) || isImpossible(max, unit);
  if (errorCodes.has(min) || errorCodes.has(max) || isImpossible(min, unit) || isImpossible(max, unit))
    return true;
  const { minCount, maxCount, aboveMin, belowMax } = scaleEnds(values, profile);
  return (
    (minCount >= levelReadings && aboveMin - min > apart * (max - aboveMin)) ||
    (maxCount >= levelReadings && max - belowMax > apart * (belowMax - min)) ||
    (minCount >= 2 && outsideTrade(min, unit)) ||
    (maxCount >= 2 && outsideTrade(max, unit))
  );
}

function isTemperature(unit: ExportUnit | null): boolean {
  return unit === 'degF' || unit === 'degC' || unit === 'K';
}

/** Outside what a temperature or a share can be at all. */
function isImpossible(value: number, unit: ExportUnit | null): boolean {
  const { lowestDegF, highestDegF } = railSettings;
  if (unit === 'degF') return value < lowestDegF - 40 || value > highestDegF + 250;
  if (unit === 'degC') return value < -75 || value > 200;
  if (unit === 'K') return value < 180 || value > 480;
  if (unit === 'percent') return value < -50 || value > 650;
  return false;
}

/** An error code that a column reads throughout. Small numbers may be anything where no unit says temperature. */
function isConstantCode(value: number, unit: ExportUnit | null): boolean {
  return (
    errorCodes.has(value) &&
    (Math.abs(value) >= 327 || (isTemperature(unit) && (value === -40 || Math.abs(value) >= 99)))
  );
}

function isRail(
  value: number,
  count: number,
  sorted: Float64Array,
  restFrom: number,
  restTo: number,
  unit: ExportUnit | null,
): boolean {
  if (isImpossible(value, unit)) return true;
  const rest = restTo - restFrom;
  if (rest < 3) return false;
  const nearest = value < sorted[restFrom]! ? sorted[restFrom]! : sorted[restTo - 1]!;
  const apart = Math.abs(nearest - value);
  const spread = middleSpread(sorted, restFrom, restTo);
  const whole = sorted[restTo - 1]! - sorted[restFrom]!;
  const code = errorCodes.has(value);
  if (!isTemperature(unit) && unit !== null) return code && Math.abs(value) >= 99 && apart > 3 * whole;
  if (outsideTrade(value, unit) && count >= 2 && apart > Math.max(spread, 2)) return true;
  if (code && apart > Math.max(spread, 5)) return Math.abs(value) >= 99 || count >= 2 || apart > 3 * whole;
  if (unit === null) return false;
  return (
    count >= railSettings.levelReadings &&
    variety(sorted, restFrom, restTo) &&
    apart > Math.max(railSettings.apart * whole, 10)
  );
}

function outsideTrade(value: number, unit: ExportUnit | null): boolean {
  const degF = unit === 'degC' ? value * 1.8 + 32 : unit === 'K' ? (value - 273.15) * 1.8 + 32 : value;
  return isTemperature(unit) && (degF < railSettings.lowestDegF || degF > railSettings.highestDegF);
}

/** Range of the middle four fifths. */
function middleSpread(sorted: Float64Array, from: number, to: number): number {
  const at = (share: number): number => sorted[from + Math.floor((to - from - 1) * share)]!;
  return at(0.9) - at(0.1);
}

function variety(sorted: Float64Array, from: number, to: number): boolean {
  let different = 1;
  for (let at = from + 1; at < to && different < railSettings.restValues; at++)
    if (sorted[at] !== sorted[at - 1]) different++;
  return different >= railSettings.restValues;
}

/** A column of an unused channel: every number far below what anything measures, all much alike. */
function allImpossible(sorted: Float64Array, from: number, to: number): boolean {
  const low = sorted[from]!;
  const high = sorted[to - 1]!;
  return high < -9000 && Math.abs(high - low) < 0.01 * Math.abs(low);
}

function sortedNumbers(values: Float64Array): Float64Array {
  return values.filter((value) => Number.isFinite(value)).sort();
}

function firstAbove(sorted: Float64Array, from: number, to: number, value: number): number {
  let at = from;
  while (at < to && sorted[at] === value) at++;
  return at;
}

function firstAtLeast(sorted: Float64Array, from: number, to: number, value: number): number {
  let at = to;
  while (at > from && sorted[at - 1] === value) at--;
  return at;
}
