import type { NamedColumn } from './role.ts';

export interface UnitGuess<Unit extends string> {
  readonly unit: Unit;
  readonly confidence: number;
  readonly because: string;
}

/** Natural logarithm of the odds that columns of one export share one unit, rather than not. */
const neighboursCount = 3;

/**
 * How likely the median of a case's air stands at a Celsius value: chilled cases about 1.5 °C, frozen about
 * −21 °C, unprocessed produce about 8 °C, a shop about 21 °C, and a little anywhere (ranges of the trade; common
 * practice).
 */
function logLikelihood(celsius: number): number {
  const bell = (mean: number, spread: number): number =>
    Math.exp(-0.5 * ((celsius - mean) / spread) ** 2) / (spread * 2.507);
  return Math.log(
    0.55 * bell(1.5, 2.5) + 0.3 * bell(-21, 3.5) + 0.13 * bell(8, 4) + 0.02 * bell(21, 4) + 0.0003,
  );
}

/** Log odds of °F against °C for one column of case air; 0 where it holds nothing. */
export function fahrenheitOdds({ facts }: NamedColumn): number {
  const { median } = facts;
  if (!Number.isFinite(median)) return 0;
  return logLikelihood(((median - 32) * 5) / 9) - logLikelihood(median);
}

/** Tells °F from °C by where the columns stand together; `stated` is what other columns of the export say. */
export function guessTemperatureUnit(
  columns: readonly NamedColumn[],
  stated: 'degF' | 'degC' | null = null,
): UnitGuess<'degF' | 'degC'> {
  const medians = columns
    .map(({ facts }) => facts.median)
    .filter(Number.isFinite)
    .sort((a, b) => a - b);
  const prior = stated === null ? 0 : stated === 'degF' ? neighboursCount : -neighboursCount;
  const odds = columns.reduce((sum, column) => sum + fahrenheitOdds(column), prior);
  const unit = odds > 0 ? 'degF' : 'degC';
  const scale = unit === 'degF' ? '°F' : '°C';
  const lowest = medians[0]?.toFixed(1) ?? '?';
  const where =
    medians.length === 1
      ? `its median is ${lowest}`
      : `the medians of ${medians.length} columns without a unit run from ${lowest} to ${medians.at(-1)?.toFixed(1) ?? '?'}`;
  const said = stated === 'degF' ? '°F' : '°C';
  const neighbours =
    stated === null
      ? ''
      : stated === unit
        ? `, and other columns say ${said}`
        : `, although other columns say ${said}`;
  return {
    unit,
    confidence: Math.min(0.99, 1 / (1 + Math.exp(-Math.abs(odds)))),
    because: `${where}, where the air of chilled and frozen cases stands in ${scale}${neighbours}`,
  };
}

/** Whether a column stands so clearly in the other scale that it cannot share the unit of its neighbours. */
export function standsInOtherScale(column: NamedColumn, unit: 'degF' | 'degC'): boolean {
  const odds = fahrenheitOdds(column);
  return unit === 'degF' ? odds < -neighboursCount : odds > neighboursCount;
}
