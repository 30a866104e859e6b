import { insideValueFrom } from '../../units/convert.ts';
import type { Kilopascal, Quantity } from '../../units/quantities.ts';
import type { ExportUnit } from '../readings.ts';

/** Converts a whole array from the export's unit to the inside one, in place. */
export function toInsideValues(
  values: Float64Array,
  unit: ExportUnit | null,
  quantity: Quantity,
  atmosphere: Kilopascal,
): void {
  if (unit === null || sameInside(unit, quantity)) return;
  for (let index = 0; index < values.length; index++) {
    values[index] = insideValueFrom(values[index]!, unit, quantity, atmosphere);
  }
}

function sameInside(unit: ExportUnit, quantity: Quantity): boolean {
  return insideValueFrom(0, unit, quantity, 100) === 0 && insideValueFrom(1, unit, quantity, 100) === 1;
}

/** Amounts become 0 and 1, in place; NaN stays NaN. */
export function toStates(values: Float64Array, onAbove: number): void {
  for (let index = 0; index < values.length; index++) {
    const value = values[index]!;
    if (!Number.isNaN(value)) values[index] = value > onAbove ? 1 : 0;
  }
}

/** A step between two values, in the inside unit. */
export function insideStep(
  step: number,
  unit: ExportUnit | null,
  quantity: Quantity,
  atmosphere: Kilopascal,
): number {
  return insideValueFrom(step, unit, quantity, atmosphere) - insideValueFrom(0, unit, quantity, atmosphere);
}
