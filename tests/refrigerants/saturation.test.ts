import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  bubblePressure,
  bubbleTemperature,
  dewPressure,
  dewTemperature,
  knownRefrigerant,
  knownRefrigerants,
} from '../../src/refrigerants/saturation.ts';
import { kilopascalFrom } from '../../src/units/convert.ts';
import { golden, goldenRows } from '../golden/load.ts';

describe('gauge readings to saturation temperature, as CoolProp gives them', () => {
  interface Reading {
    readonly refrigerant: string;
    readonly psig: number;
    readonly atm_kPa: number;
    readonly p_kPa_abs: number;
    readonly t_dew_C: number;
    readonly t_bubble_C?: number;
  }
  const cases: Reading[] = golden('psat/saturation_temperature_golden.json').cases;

  test.each(cases)('$refrigerant at $psig psig under $atm_kPa kPa', (reading) => {
    const pressure = kilopascalFrom(reading.psig, 'psig', reading.atm_kPa);
    expect(Math.abs(pressure - reading.p_kPa_abs)).toBeLessThan(1e-3);
    expect(Math.abs(dewTemperature(reading.refrigerant, pressure) - reading.t_dew_C)).toBeLessThan(0.02);
    if (reading.t_bubble_C !== undefined) {
      expect(Math.abs(bubbleTemperature(reading.refrigerant, pressure) - reading.t_bubble_C)).toBeLessThan(
        0.02,
      );
    }
  });
});

describe('saturation pressures of second sources (named in tests/golden/psat/crosscheck.csv)', () => {
  const rows = goldenRows('psat/crosscheck.csv').filter((row) => knownRefrigerant(row.refrigerant!) !== null);

  test('there are enough of them', () => {
    expect(rows.length).toBeGreaterThan(90);
  });

  test.each(rows)('$refrigerant $state at $t_degC °C', (row) => {
    const pressureOf = row.state === 'bubble' ? bubblePressure : dewPressure;
    const pressure = pressureOf(row.refrigerant!, Number(row.t_degC));
    // 2 % is how far published tables of one blend differ; the table itself adds no more than 0.1 %.
    expect(Math.abs(pressure / Number(row.p_reference_kPa) - 1)).toBeLessThan(0.02);
    expect(Math.abs(pressure / Number(row.p_coolprop_kPa) - 1)).toBeLessThan(0.001);
  });
});

describe('boiling and dew points at 101.325 kPa (from memory of ASHRAE Standard 34)', () => {
  const rows = goldenRows('psat/crosscheck_nbp.csv').filter(
    (row) => knownRefrigerant(row.refrigerant!) !== null,
  );

  test.each(rows)('$refrigerant $state', (row) => {
    const temperatureOf = row.state === 'bubble' ? bubbleTemperature : dewTemperature;
    const reference = Number(row['t_reference_from_memory_ASHRAE34']);
    expect(Math.abs(temperatureOf(row.refrigerant!, 101.325) - reference)).toBeLessThan(0.3);
  });
});

test.each([
  ['R-448A', 'R-448A'],
  ['r448a', 'R-448A'],
  ['448A', 'R-448A'],
  [' R 448a ', 'R-448A'],
  ['CO2', 'R-744'],
  ['R744', 'R-744'],
  ['R404', 'R-404A'],
  ['HFC-134a', 'R-134a'],
  ['propane', 'R-290'],
  ['HFO-1234yf', 'R-1234yf'],
])('%s is understood as %s', (written, designation) => {
  expect(knownRefrigerant(written)).toBe(designation);
});

test.each(['R-502', 'R-9', '', 'water'])('%s has no table, and gives NaN instead of a guess', (name) => {
  expect(knownRefrigerant(name)).toBeNull();
  expect(dewTemperature(name, 300)).toBeNaN();
  expect(dewPressure(name, 0)).toBeNaN();
});

test('outside the table there is no number', () => {
  expect(dewTemperature('R-448A', 5)).toBeNaN();
  expect(dewTemperature('CO2', 9000)).toBeNaN();
  expect(dewPressure('CO2', 40)).toBeNaN();
  expect(dewTemperature('R-448A', Number.NaN)).toBeNaN();
});

describe.each(knownRefrigerants)('%s', (name) => {
  const temperature = fc.double({ min: -40, max: 28, noNaN: true });

  test('pressure and temperature are each other undone', () => {
    fc.assert(
      fc.property(temperature, (celsius) => {
        expect(dewTemperature(name, dewPressure(name, celsius))).toBeCloseTo(celsius, 8);
        expect(bubbleTemperature(name, bubblePressure(name, celsius))).toBeCloseTo(celsius, 8);
      }),
    );
  });

  test('pressure rises with temperature, and the dew point is never below the bubble point', () => {
    fc.assert(
      fc.property(temperature, fc.double({ min: 0.01, max: 1, noNaN: true }), (celsius, step) => {
        expect(dewPressure(name, celsius + step)).toBeGreaterThan(dewPressure(name, celsius));
        expect(dewPressure(name, celsius)).toBeLessThanOrEqual(bubblePressure(name, celsius));
      }),
    );
  });
});
