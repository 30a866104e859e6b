import type { ExportUnit } from './export-units.ts';

const codes: { readonly [unit in ExportUnit]: string } = {
  degF: '[degF]',
  degC: 'Cel',
  K: 'K',
  deltaF: '[degF]',
  deltaC: 'K',
  psig: '[psi]',
  psia: '[psi]',
  bar: 'bar',
  barg: 'bar',
  bara: 'bar',
  kPa: 'kPa',
  kPag: 'kPa',
  MPa: 'MPa',
  MPag: 'MPa',
  mbar: 'mbar',
  mbarg: 'mbar',
  kgfcm2: 'kgf/cm2',
  kgfcm2g: 'kgf/cm2',
  percent: '%',
  kW: 'kW',
  W: 'W',
  A: 'A',
  V: 'V',
  Hz: 'Hz',
  min: 'min',
  s: 's',
  h: 'h',
  count: '{count}',
};

/**
 * The UCUM code of an export's unit, `''` for none. UCUM knows no gauge pressure (`psig` is `[psi]`) and no
 * Fahrenheit difference, so a difference in °F is written `[degF]`, the unit that its numbers are in.
 */
export function ucumCode(unit: ExportUnit | null): string {
  return unit === null ? '' : codes[unit];
}
