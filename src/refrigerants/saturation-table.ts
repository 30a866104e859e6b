import type { Celsius, Kilopascal } from '../units/quantities.ts';

/** Saturation pressures in equal steps of temperature. `tests/golden/SOURCES.md` names origin and licence. */
export interface SaturationTable {
  /** Designation of ASHRAE Standard 34 as a technician writes it, `R-448A`. */
  readonly name: string;
  readonly firstCelsius: Celsius;
  readonly stepKelvin: number;
  /** Absolute pressure of the saturated vapour. */
  readonly dew: readonly Kilopascal[];
  /** Of the saturated liquid; null for a pure fluid, where both are one. */
  readonly bubble: readonly Kilopascal[] | null;
}

const kelvinAtZeroCelsius = 273.15;

/** Linear in ln p over 1/T between the rows, as Clausius and Clapeyron suggest; NaN outside the table. */
export function pressureAt(
  table: SaturationTable,
  curve: readonly Kilopascal[],
  celsius: Celsius,
): Kilopascal {
  const place = (celsius - table.firstCelsius) / table.stepKelvin;
  if (!(place >= 0 && place <= curve.length - 1)) return Number.NaN;
  const row = Math.min(curve.length - 2, Math.floor(place));
  const inverse = 1 / (celsius + kelvinAtZeroCelsius);
  const share =
    (inverse - inverseKelvin(table, row)) / (inverseKelvin(table, row + 1) - inverseKelvin(table, row));
  return curve[row]! * (curve[row + 1]! / curve[row]!) ** share;
}

/** The way back; NaN outside the table. */
export function temperatureAt(
  table: SaturationTable,
  curve: readonly Kilopascal[],
  pressure: Kilopascal,
): Celsius {
  if (!(pressure >= curve[0]! && pressure <= curve[curve.length - 1]!)) return Number.NaN;
  let row = 0;
  let high = curve.length - 2;
  while (row < high) {
    const middle = (row + high + 1) >> 1;
    if (curve[middle]! <= pressure) row = middle;
    else high = middle - 1;
  }
  const share = Math.log(pressure / curve[row]!) / Math.log(curve[row + 1]! / curve[row]!);
  const from = inverseKelvin(table, row);
  return 1 / (from + share * (inverseKelvin(table, row + 1) - from)) - kelvinAtZeroCelsius;
}

function inverseKelvin(table: SaturationTable, row: number): number {
  return 1 / (table.firstCelsius + row * table.stepKelvin + kelvinAtZeroCelsius);
}
