import { celsiusFrom, exportTemperatureFrom } from '../../units/convert.ts';
import type { ExportUnit } from '../../units/export-units.ts';
import type { ColumnProfile } from './column-profile.ts';

/** How a change of scale is told from a change of temperature: common practice, no source. */
export const unitChangeSettings = {
  /** Readings on either side that are compared. */
  compared: 300,
  fewest: 8,
  /** A jump smaller than this is none. */
  leastJump: 5,
  /** How far the level behind the jump may be from the converted level before it, in the later scale. */
  levelTolerance: 2.5,
  stepTolerance: 4,
} as const;

export interface ScaleChange {
  /** First reading in the other scale. */
  readonly from: number;
  readonly before: 'degF' | 'degC';
  readonly after: 'degF' | 'degC';
}

/**
 * The reading from which a column that says nothing of it is in the other temperature scale: its largest jump,
 * where both the step itself and the level on its two sides fit F = 1.8 C + 32. Null where there is none.
 */
export function findScaleChange(
  values: Float64Array,
  profile: ColumnProfile,
  unit: ExportUnit | null,
): ScaleChange | null {
  if (unit !== null && unit !== 'degF' && unit !== 'degC') return null;
  if (profile.largestStep < unitChangeSettings.leastJump) return null;
  const jump = {
    at: profile.stepAt,
    before: readingBefore(values, profile.stepAt),
    after: values[profile.stepAt]!,
  };
  const { compared, fewest, leastJump, levelTolerance, stepTolerance } = unitChangeSettings;
  const left = numbersBefore(values, jump.at, compared);
  const right = numbersFrom(values, jump.at, compared);
  if (left.length < fewest || right.length < fewest) return null;
  const [levelBefore, levelAfter] = [median(left), median(right)];
  if (Math.abs(levelAfter - levelBefore) < leastJump) return null;
  for (const [before, after] of [
    ['degF', 'degC'],
    ['degC', 'degF'],
  ] as const) {
    const convert = (value: number): number => exportTemperatureFrom(celsiusFrom(value, before), after);
    const scale = after === 'degF' ? 1.8 : 1;
    const levelFits = Math.abs(convert(levelBefore) - levelAfter) <= levelTolerance * scale;
    const stepFits = Math.abs(convert(jump.before) - jump.after) <= stepTolerance * scale;
    if (levelFits && stepFits && spreadFits(left, right, before)) return { from: jump.at, before, after };
  }
  return null;
}

function readingBefore(values: Float64Array, index: number): number {
  let at = index - 1;
  while (at > 0 && Number.isNaN(values[at]!)) at--;
  return values[at]!;
}

function numbersBefore(values: Float64Array, end: number, most: number): number[] {
  const found: number[] = [];
  for (let at = end - 1; at >= 0 && found.length < most; at--)
    if (!Number.isNaN(values[at]!)) found.push(values[at]!);
  return found;
}

function numbersFrom(values: Float64Array, start: number, most: number): number[] {
  const found: number[] = [];
  for (let at = start; at < values.length && found.length < most; at++)
    if (!Number.isNaN(values[at]!)) found.push(values[at]!);
  return found;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1]!;
}

/** A degree Fahrenheit is smaller, so the swing in it is wider; a constant fits either. */
function spreadFits(left: readonly number[], right: readonly number[], before: 'degF' | 'degC'): boolean {
  const deviation = (values: readonly number[]): number => {
    const middle = median(values);
    return median(values.map((value) => Math.abs(value - middle)));
  };
  const [wide, narrow] =
    before === 'degF' ? [deviation(left), deviation(right)] : [deviation(right), deviation(left)];
  if (wide < 0.2) return narrow < 0.3;
  return narrow / wide > 0.25 && narrow / wide < 1;
}
