import type { Log } from '../model/log.ts';
import { exportDifferenceFrom, exportPressureFrom, exportTemperatureFrom } from '../units/convert.ts';
import { pressureDifferenceSigns } from '../units/display.ts';

/** From inside units to the numbers that this site reads, with the sign to write behind them. */
export interface SiteScale {
  readonly temperatureSign: string;
  readonly pressureSign: string;
  /** Of a difference between pressures: it has no atmosphere. */
  readonly pressureDifferenceSign: string;
  temperature(celsius: number): number;
  difference(kelvin: number): number;
  pressure(kilopascal: number): number;
}

const temperatureSigns = { degF: '°F', degC: '°C', K: 'K' } as const;

export function siteScale({ units, atmosphere }: Pick<Log, 'units' | 'atmosphere'>): SiteScale {
  return {
    temperatureSign: temperatureSigns[units.temperature],
    pressureSign: units.pressure,
    pressureDifferenceSign: pressureDifferenceSigns[units.pressure],
    temperature: (celsius) => exportTemperatureFrom(celsius, units.temperature),
    difference: (kelvin) => exportDifferenceFrom(kelvin, units.temperature),
    pressure: (kilopascal) => exportPressureFrom(kilopascal, units.pressure, atmosphere),
  };
}
