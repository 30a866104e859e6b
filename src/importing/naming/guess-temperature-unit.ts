import type { Point } from '../assembling/point.ts';
import { factsOf } from './column-facts.ts';

export interface UnitGuess {
  readonly unit: 'degF' | 'degC';
  readonly confidence: number;
  readonly because: string;
}

/**
 * How likely the median of a case's air stands at a Celsius value: chilled cases about 1.5 °C, frozen about
 * −21 °C, unprocessed produce about 8 °C, and a little anywhere (ranges of the trade; common practice).
 */
function logLikelihood(celsius: number): number {
  const bell = (mean: number, spread: number): number =>
    Math.exp(-0.5 * ((celsius - mean) / spread) ** 2) / (spread * 2.507);
  return Math.log(0.55 * bell(1.5, 2.5) + 0.3 * bell(-21, 3.5) + 0.15 * bell(8, 4) + 0.0003);
}

/** Tells °F from °C by where the columns stand together; all unlabelled air of one site is taken as one unit. */
export function guessTemperatureUnit(points: readonly Point[]): UnitGuess {
  let forFahrenheit = 0;
  const medians: number[] = [];
  for (const point of points) {
    const { median } = factsOf(point);
    if (!Number.isFinite(median)) continue;
    medians.push(median);
    forFahrenheit += logLikelihood(((median - 32) * 5) / 9) - logLikelihood(median);
  }
  medians.sort((a, b) => a - b);
  const range = `${medians[0]?.toFixed(1) ?? '?'} to ${medians.at(-1)?.toFixed(1) ?? '?'}`;
  const unit = forFahrenheit > 0 ? 'degF' : 'degC';
  const confidence = 1 / (1 + Math.exp(-Math.abs(forFahrenheit)));
  const scale = unit === 'degF' ? '°F' : '°C';
  return {
    unit,
    confidence: Math.min(0.99, confidence),
    because: `the medians of ${medians.length} columns without a unit run from ${range}, which is where the air of chilled and frozen cases stands in ${scale}`,
  };
}
