import type { Quantity } from './quantities.ts';

/**
 * Units that a column of an export may carry. `bar`, `kPa`, `MPa`, `mbar` and `kgfcm2` (kilogram-force a square
 * centimetre) without a letter are absolute, as `psia` and `bara`; those with a `g` stand above the site's atmosphere.
 * `deltaF` and `deltaC` are differences.
 */
export const exportUnits = [
  'degF',
  'degC',
  'K',
  'deltaF',
  'deltaC',
  'psig',
  'psia',
  'bar',
  'barg',
  'bara',
  'kPa',
  'kPag',
  'MPa',
  'MPag',
  'mbar',
  'mbarg',
  'kgfcm2',
  'kgfcm2g',
  'percent',
  'kW',
  'W',
  'A',
  'V',
  'Hz',
  'min',
  's',
  'h',
  'count',
] as const;
export type ExportUnit = (typeof exportUnits)[number];

const quantities: { readonly [unit in ExportUnit]: Quantity } = {
  degF: 'temperature',
  degC: 'temperature',
  K: 'temperature',
  deltaF: 'temperature-difference',
  deltaC: 'temperature-difference',
  psig: 'pressure',
  psia: 'pressure',
  bar: 'pressure',
  barg: 'pressure',
  bara: 'pressure',
  kPa: 'pressure',
  kPag: 'pressure',
  MPa: 'pressure',
  MPag: 'pressure',
  mbar: 'pressure',
  mbarg: 'pressure',
  kgfcm2: 'pressure',
  kgfcm2g: 'pressure',
  percent: 'fraction',
  kW: 'power',
  W: 'power',
  A: 'other',
  V: 'other',
  Hz: 'other',
  min: 'other',
  s: 'other',
  h: 'other',
  count: 'other',
};

/** What a column in this unit measures, as far as the unit alone tells (`K` and `degF` may also be a difference). */
export function quantityOf(unit: ExportUnit): Quantity {
  return quantities[unit];
}
