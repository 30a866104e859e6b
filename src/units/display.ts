import { exportDifferenceFrom, exportPressureFrom, exportTemperatureFrom } from './convert.ts';
import type { DisplayUnits } from './display-units.ts';
import { formatNumber, unknownText } from './format-number.ts';
import type { Celsius, Kelvin, KelvinPerDay, Kilopascal } from './quantities.ts';

const degreeSigns = { degF: '°F', degC: '°C', K: 'K' } as const;
const pressureDecimals = { psig: 1, psia: 1, bar: 2, barg: 2, kPa: 0 } as const;
export const pressureDifferenceSigns = {
  psig: 'psi',
  psia: 'psi',
  bar: 'bar',
  barg: 'bar',
  kPa: 'kPa',
} as const;

function withUnit(value: number, decimals: number, unit: string): string {
  return Number.isFinite(value) ? `${formatNumber(value, decimals)} ${unit}` : unknownText;
}

/** `41.0 °F`: a point on the scale. */
export function formatTemperature(celsius: Celsius, units: DisplayUnits): string {
  return withUnit(exportTemperatureFrom(celsius, units.temperature), 1, degreeSigns[units.temperature]);
}

/** `3.5 °F`: a temperature difference. */
export function formatDifference(kelvin: Kelvin, units: DisplayUnits): string {
  return withUnit(exportDifferenceFrom(kelvin, units.temperature), 1, degreeSigns[units.temperature]);
}

/** `0.41 °F a day`. */
export function formatRate(kelvinPerDay: KelvinPerDay, units: DisplayUnits): string {
  return withUnit(
    exportDifferenceFrom(kelvinPerDay, units.temperature),
    2,
    `${degreeSigns[units.temperature]} a day`,
  );
}

/** `28.4 psig`: an absolute pressure, shown above `atmosphere` where the site reads gauge. */
export function formatPressure(kilopascal: Kilopascal, units: DisplayUnits, atmosphere: Kilopascal): string {
  const value = exportPressureFrom(kilopascal, units.pressure, atmosphere);
  return withUnit(value, pressureDecimals[units.pressure], units.pressure);
}

/** `3.5 psi`: a pressure difference. */
export function formatPressureDifference(kilopascal: Kilopascal, units: DisplayUnits): string {
  const value = exportPressureFrom(kilopascal, units.pressure, 0);
  return withUnit(value, pressureDecimals[units.pressure], pressureDifferenceSigns[units.pressure]);
}

/** `62 %` of a fraction 0.62. */
export function formatShare(fraction: number): string {
  return withUnit(fraction * 100, 0, '%');
}

export {
  formatDay,
  formatDayAndTime,
  formatDays,
  formatLocalDate,
  formatLocalTime,
  formatMinutes,
  localTimestamp,
} from './display-time.ts';
