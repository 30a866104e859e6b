import type { Log } from '../model/log.ts';
import { exportDifferenceFrom, exportPressureFrom, exportTemperatureFrom } from '../units/convert.ts';

/** From inside units to the numbers that this site reads, with the sign to write behind them. */
export interface SiteScale {
  readonly temperatureSign: string;
  readonly pressureSign: string;
  temperature(celsius: number): number;
  difference(kelvin: number): number;
  pressure(kilopascal: number): number;
}

const temperatureSigns = { degF: '°F', degC: '°C', K: 'K' } as const;

export function siteScale({ units, atmosphere }: Pick<Log, 'units' | 'atmosphere'>): SiteScale {
  return {
    temperatureSign: temperatureSigns[units.temperature],
    pressureSign: units.pressure,
    temperature: (celsius) => exportTemperatureFrom(celsius, units.temperature),
    difference: (kelvin) => exportDifferenceFrom(kelvin, units.temperature),
    pressure: (kilopascal) => exportPressureFrom(kilopascal, units.pressure, atmosphere),
  };
}
