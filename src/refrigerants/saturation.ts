import type { Celsius, Kilopascal } from '../units/quantities.ts';
import { pressureAt, type SaturationTable, temperatureAt } from './saturation-table.ts';
import { r22 } from './tables/r22.ts';
import { r134a } from './tables/r134a.ts';
import { r290 } from './tables/r290.ts';
import { r404a } from './tables/r404a.ts';
import { r407a } from './tables/r407a.ts';
import { r407c } from './tables/r407c.ts';
import { r407f } from './tables/r407f.ts';
import { r410a } from './tables/r410a.ts';
import { r448a } from './tables/r448a.ts';
import { r449a } from './tables/r449a.ts';
import { r507a } from './tables/r507a.ts';
import { r744 } from './tables/r744.ts';
import { r1234yf } from './tables/r1234yf.ts';

const tables: readonly SaturationTable[] = [
  r22,
  r134a,
  r290,
  r404a,
  r407a,
  r407c,
  r407f,
  r410a,
  r448a,
  r449a,
  r507a,
  r744,
  r1234yf,
];

const otherNames: { readonly [key: string]: string } = {
  CO2: '744',
  CARBONDIOXIDE: '744',
  PROPANE: '290',
  '404': '404A',
  '507': '507A',
};

function keyOf(name: string): string {
  const letters = name.toUpperCase().replace(/[^A-Z0-9]/g, '');
  const key = letters.replace(/^R(?=\d)|^HF[CO](?=\d)|^HCFC(?=\d)|^HC(?=\d)/, '');
  return otherNames[key] ?? key;
}

const byKey: ReadonlyMap<string, SaturationTable> = new Map(
  tables.map((table) => [keyOf(table.name), table]),
);

/** All refrigerants of which the saturation pressure is known, `R-22` to `R-1234yf`. */
export const knownRefrigerants: readonly string[] = tables.map((table) => table.name);

/**
 * The designation that a name stands for (`r448a`, `448A`, `R 448A` are `R-448A`, `CO2` is `R-744`), or null for one
 * that has no table here. R-502 is left out on purpose: see docs/reference/refrigerants.md.
 */
export function knownRefrigerant(name: string): string | null {
  return byKey.get(keyOf(name))?.name ?? null;
}

function tableOf(refrigerant: string): SaturationTable | null {
  return byKey.get(keyOf(refrigerant)) ?? null;
}

/**
 * Temperature at which the last liquid has evaporated, at an absolute pressure: the one from which superheat counts.
 * NaN outside the table (at CO2's critical point it ends) and for an unknown refrigerant.
 */
export function dewTemperature(refrigerant: string, kilopascal: Kilopascal): Celsius {
  const table = tableOf(refrigerant);
  return table === null ? Number.NaN : temperatureAt(table, table.dew, kilopascal);
}

/** Temperature at which the first bubble forms: the one from which subcooling counts. NaN as `dewTemperature`. */
export function bubbleTemperature(refrigerant: string, kilopascal: Kilopascal): Celsius {
  const table = tableOf(refrigerant);
  return table === null ? Number.NaN : temperatureAt(table, table.bubble ?? table.dew, kilopascal);
}

export function dewPressure(refrigerant: string, celsius: Celsius): Kilopascal {
  const table = tableOf(refrigerant);
  return table === null ? Number.NaN : pressureAt(table, table.dew, celsius);
}

export function bubblePressure(refrigerant: string, celsius: Celsius): Kilopascal {
  const table = tableOf(refrigerant);
  return table === null ? Number.NaN : pressureAt(table, table.bubble ?? table.dew, celsius);
}
