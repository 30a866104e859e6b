import type { ExportUnit } from './export-units.ts';
import type { Celsius, Kelvin, Kilopascal, Quantity } from './quantities.ts';

const kelvinAtZeroCelsius = 273.15;
/** 1 lbf/in², exact: 0.45359237 kg × 9.80665 m/s² ÷ (0.0254 m)² (NIST SP 811, appendix B). */
const kilopascalPerPsi = 6.894757293168361;
const kelvinPerFahrenheit = 5 / 9;

function refuse(unit: ExportUnit, wanted: string): never {
  throw new TypeError(`The unit ${unit} does not measure ${wanted}.`);
}

function kelvinPerUnit(unit: ExportUnit): number {
  if (unit === 'degF' || unit === 'deltaF') return kelvinPerFahrenheit;
  if (unit === 'degC' || unit === 'deltaC' || unit === 'K') return 1;
  return refuse(unit, 'a temperature difference');
}

/** Kilopascal a unit, exact (NIST SP 811, appendix B). */
const pressures = new Map<ExportUnit, number>();
for (const [units, kilopascal] of [
  [['psig', 'psia'], kilopascalPerPsi],
  [['bar', 'barg', 'bara'], 100],
  [['kPa', 'kPag'], 1],
  [['MPa', 'MPag'], 1000],
  [['mbar', 'mbarg'], 0.1],
  [['kgfcm2', 'kgfcm2g'], 98.0665],
] as const) {
  for (const unit of units) pressures.set(unit, kilopascal);
}

function kilopascalPerUnit(unit: ExportUnit): number {
  return pressures.get(unit) ?? refuse(unit, 'a pressure');
}

const gauges: ReadonlySet<ExportUnit> = new Set(['psig', 'barg', 'kPag', 'MPag', 'mbarg', 'kgfcm2g']);

function isGauge(unit: ExportUnit): boolean {
  return gauges.has(unit);
}

/** A point on the temperature scale. Throws a TypeError for a unit that is none (`deltaF`, `psig` …). */
export function celsiusFrom(value: number, unit: ExportUnit): Celsius {
  if (unit === 'degF') return (value - 32) * kelvinPerFahrenheit;
  if (unit === 'degC') return value;
  if (unit === 'K') return value - kelvinAtZeroCelsius;
  return refuse(unit, 'a temperature');
}

/** A temperature difference: the zero of the scale plays no part, so `degF` counts as `deltaF`. */
export function kelvinDifferenceFrom(value: number, unit: ExportUnit): Kelvin {
  return value * kelvinPerUnit(unit);
}

/** An absolute pressure; gauge units are raised by `atmosphere`. */
export function kilopascalFrom(value: number, unit: ExportUnit, atmosphere: Kilopascal): Kilopascal {
  return value * kilopascalPerUnit(unit) + (isGauge(unit) ? atmosphere : 0);
}

/** A pressure difference: gauge and absolute are the same. */
export function kilopascalDifferenceFrom(value: number, unit: ExportUnit): Kilopascal {
  return value * kilopascalPerUnit(unit);
}

/**
 * The number as an inside value of `quantity`: Celsius, Kelvin, Kilopascal absolute, a fraction, kilowatt.
 * Numbers without a unit, and quantities that have no inside unit, stay as they are; NaN stays NaN.
 */
export function insideValueFrom(
  value: number,
  unit: ExportUnit | null,
  quantity: Quantity,
  atmosphere: Kilopascal,
): number {
  if (unit === null) return value;
  switch (quantity) {
    case 'temperature':
      return celsiusFrom(value, unit);
    case 'temperature-difference':
      return kelvinDifferenceFrom(value, unit);
    case 'pressure':
      return kilopascalFrom(value, unit, atmosphere);
    case 'pressure-difference':
      return kilopascalDifferenceFrom(value, unit);
    case 'fraction':
      return unit === 'percent' ? value / 100 : value;
    case 'power':
      return unit === 'W' ? value / 1000 : value;
    default:
      return value;
  }
}

/** The way back: rounded to the decimals that the export had, it is the export's own number again. */
export function exportValueFrom(
  inside: number,
  unit: ExportUnit | null,
  quantity: Quantity,
  atmosphere: Kilopascal,
): number {
  if (unit === null) return inside;
  switch (quantity) {
    case 'temperature':
      return exportTemperatureFrom(inside, unit);
    case 'temperature-difference':
      return inside / kelvinPerUnit(unit);
    case 'pressure':
      return (inside - (isGauge(unit) ? atmosphere : 0)) / kilopascalPerUnit(unit);
    case 'pressure-difference':
      return inside / kilopascalPerUnit(unit);
    case 'fraction':
      return unit === 'percent' ? inside * 100 : inside;
    case 'power':
      return unit === 'W' ? inside * 1000 : inside;
    default:
      return inside;
  }
}

export function exportTemperatureFrom(celsius: Celsius, unit: ExportUnit): number {
  if (unit === 'degF') return celsius / kelvinPerFahrenheit + 32;
  if (unit === 'degC') return celsius;
  if (unit === 'K') return celsius + kelvinAtZeroCelsius;
  return refuse(unit, 'a temperature');
}

export function exportDifferenceFrom(kelvin: Kelvin, unit: ExportUnit): number {
  return kelvin / kelvinPerUnit(unit);
}

export function exportPressureFrom(kilopascal: Kilopascal, unit: ExportUnit, atmosphere: Kilopascal): number {
  return exportValueFrom(kilopascal, unit, 'pressure', atmosphere);
}
