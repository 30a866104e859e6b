import type { ExportUnit } from '../readings.ts';
import type { SiteFile } from '../site-file/site-file.ts';
import { guessTemperatureUnit, type UnitGuess } from './guess-temperature-unit.ts';
import type { NamedColumn } from './role.ts';

export interface GuessedUnits {
  /** Null where every column of the kind says its unit. */
  readonly temperature: UnitGuess<'degF' | 'degC'> | null;
  readonly pressure: UnitGuess<'psig' | 'barg' | 'kPa'> | null;
}

/** Units for the columns that say none, from where their values stand and from what their neighbours say. */
export function guessUnits(
  temperatures: readonly NamedColumn[],
  pressures: readonly NamedColumn[],
  stated: readonly ExportUnit[],
  known: SiteFile['units'],
): GuessedUnits {
  const statedTemperature = stated.find((unit) => unit === 'degF' || unit === 'degC') ?? null;
  const temperature =
    known?.temperature !== undefined || temperatures.length === 0
      ? null
      : guessTemperatureUnit(temperatures, statedTemperature as 'degF' | 'degC' | null);
  const siteTemperature = known?.temperature ?? temperature?.unit ?? statedTemperature;
  const pressure =
    known?.pressure !== undefined || pressures.length === 0
      ? null
      : guessPressureUnit(pressures, siteTemperature === 'degF');
  return { temperature, pressure };
}

/** Suction and discharge stand above these in kPa, and never in psig or bar. */
const kilopascalAbove = 500;
/** Suction and discharge of all but CO₂ stand below this in bar (common practice, no source). */
const neverBar = 20;

function guessPressureUnit(
  columns: readonly NamedColumn[],
  fahrenheit: boolean,
): UnitGuess<'psig' | 'barg' | 'kPa'> {
  const highest = Math.max(...columns.map(({ facts }) => facts.high));
  if (!fahrenheit && highest > kilopascalAbove) {
    return {
      unit: 'kPa',
      confidence: 0.7,
      because: `the highest reads ${highest.toFixed(0)}, too much for bar`,
    };
  }
  if (fahrenheit || highest > 150) {
    return {
      unit: 'psig',
      confidence: fahrenheit ? (highest > neverBar ? 0.9 : 0.8) : 0.6,
      because: fahrenheit
        ? 'the temperatures are in °F'
        : `the highest reads ${highest.toFixed(0)}, too much for bar`,
    };
  }
  return {
    unit: 'barg',
    confidence: 0.7,
    because: 'the temperatures are in °C, and gauges at a rack read above the atmosphere',
  };
}
