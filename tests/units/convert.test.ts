import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { atmosphereAtAltitude, seaLevelAtmosphere } from '../../src/units/atmosphere.ts';
import {
  celsiusFrom,
  exportValueFrom,
  insideValueFrom,
  kelvinDifferenceFrom,
  kilopascalFrom,
} from '../../src/units/convert.ts';
import { type ExportUnit, exportUnits, quantityOf } from '../../src/units/export-units.ts';

// Fixed points of the scales: NIST Special Publication 811 (2008), appendix B.
test.each<[number, ExportUnit, number]>([
  [32, 'degF', 0],
  [212, 'degF', 100],
  [-40, 'degF', -40],
  [273.15, 'K', 0],
  [5, 'degC', 5],
])('%d %s is %d °C', (value, unit, celsius) => {
  expect(celsiusFrom(value, unit)).toBeCloseTo(celsius, 12);
});

test('a difference of 32 °F is 17.8 K, not 0', () => {
  expect(kelvinDifferenceFrom(32, 'degF')).toBeCloseTo(160 / 9, 12);
  expect(kelvinDifferenceFrom(32, 'deltaF')).toBeCloseTo(160 / 9, 12);
  expect(kelvinDifferenceFrom(3, 'K')).toBe(3);
});

test('gauge pressures stand above the atmosphere of the site, absolute ones do not', () => {
  expect(kilopascalFrom(0, 'psig', 83.4)).toBe(83.4);
  expect(kilopascalFrom(14.695948775513, 'psia', 83.4)).toBeCloseTo(101.325, 9);
  expect(kilopascalFrom(1, 'barg', 101.325)).toBeCloseTo(201.325, 12);
  expect(kilopascalFrom(1, 'bar', 101.325)).toBe(100);
  expect(kilopascalFrom(250, 'kPa', 83.4)).toBe(250);
  expect(kilopascalFrom(0.25, 'MPag', 83.4)).toBeCloseTo(333.4, 9);
  expect(kilopascalFrom(1013.25, 'mbar', 83.4)).toBeCloseTo(101.325, 9);
  // One technical atmosphere: NIST Special Publication 811, appendix B.
  expect(kilopascalFrom(1, 'kgfcm2', 83.4)).toBe(98.0665);
});

test('a unit of another quantity is refused by name', () => {
  expect(() => celsiusFrom(1, 'psig')).toThrow('The unit psig does not measure a temperature.');
  expect(() => celsiusFrom(1, 'deltaF')).toThrow(TypeError);
  expect(() => kelvinDifferenceFrom(1, 'bar')).toThrow(TypeError);
  expect(() => kilopascalFrom(1, 'degC', 101.325)).toThrow(TypeError);
});

test('a missing value stays missing', () => {
  expect(celsiusFrom(Number.NaN, 'degF')).toBeNaN();
  expect(kilopascalFrom(Number.NaN, 'psig', 101.325)).toBeNaN();
});

describe('inside and back to the decimals of the export', () => {
  const atmosphere = fc.double({ min: 60, max: 105, noNaN: true });

  test.each(exportUnits)('%s', (unit) => {
    const quantities =
      unit === 'K' || unit === 'degF' || unit === 'degC'
        ? ['temperature', 'temperature-difference']
        : [quantityOf(unit)];
    fc.assert(
      fc.property(
        fc.integer({ min: -9_999_999, max: 9_999_999 }),
        fc.integer({ min: 0, max: 6 }),
        atmosphere,
        fc.constantFrom(...(quantities as ReturnType<typeof quantityOf>[])),
        (digits, decimals, pressure, quantity) => {
          const written = (digits / 10 ** decimals).toFixed(decimals);
          const inside = insideValueFrom(Number(written), unit, quantity, pressure);
          const back = exportValueFrom(inside, unit, quantity, pressure).toFixed(decimals);
          expect(Number(back)).toBe(Number(written));
        },
      ),
    );
  });
});

test('the standard atmosphere is that of the tables (ISO 2533:1975, U.S. Standard Atmosphere 1976; from memory)', () => {
  expect(atmosphereAtAltitude(0)).toBe(seaLevelAtmosphere);
  expect(atmosphereAtAltitude(1000)).toBeCloseTo(89.876, 2);
  expect(atmosphereAtAltitude(2000)).toBeCloseTo(79.501, 2);
  expect(atmosphereAtAltitude(5000)).toBeCloseTo(54.048, 2);
  expect(atmosphereAtAltitude(1609)).toBeCloseTo(83.4, 0);
  expect(atmosphereAtAltitude(20_000)).toBeNaN();
  expect(atmosphereAtAltitude(Number.NaN)).toBeNaN();
});
