import { celsiusFrom, exportTemperatureFrom } from '../../units/convert.ts';
import { type ExportUnit, quantityOf } from '../../units/export-units.ts';

/** Whether numbers in one unit can be written exactly in the other: both are temperatures. */
export function convertible(from: ExportUnit, to: ExportUnit): boolean {
  return quantityOf(from) === 'temperature' && quantityOf(to) === 'temperature';
}

/** A temperature in another unit, rounded to a millionth, so that no digits appear that nobody measured. */
export function convertedTemperature(value: number, from: ExportUnit, to: ExportUnit): number {
  return Math.round(exportTemperatureFrom(celsiusFrom(value, from), to) * 1e6) / 1e6;
}

/** Whether readings in the two units can stand in one column as they are. */
export function sameUnit(a: ExportUnit | null, b: ExportUnit | null): boolean {
  return a === b || a === null || b === null;
}
