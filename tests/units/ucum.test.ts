import ucumLhc from '@lhncbc/ucum-lhc';
import { expect, test } from 'vitest';
import { exportUnits } from '../../src/units/export-units.ts';
import { ucumCode } from '../../src/units/ucum.ts';

// The Unified Code for Units of Measure, as the U.S. National Library of Medicine implements it.
const ucum = ucumLhc.UcumLhcUtils.getInstance();

test.each(exportUnits)('the code of %s is valid UCUM', (unit) => {
  expect(ucum.validateUnitString(ucumCode(unit)).status).toBe('valid');
});

test.each(['K/d', 'K.h', 'K', 'kPa', '{starts}/h', 'kPa{difference}', '1', 'min', 'h', 'd'])(
  '%s of a measure is valid UCUM',
  (code) => {
    expect(ucum.validateUnitString(code).status).toBe('valid');
  },
);

test('no unit has the empty code', () => {
  expect(ucumCode(null)).toBe('');
});

test('conversion agrees with UCUM where both have it', () => {
  const converted = ucum.convertUnitTo('[psi]', 30, 'kPa');
  expect(converted.toVal).toBeCloseTo(30 * 6.894757293168361, 3);
});
