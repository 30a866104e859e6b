import { describe, expect, it } from 'vitest';
import {
  unconvertedUnit,
  unitInHeader,
  unitNamed,
  unitPart,
} from '../../../src/importing/header/unit-words.ts';

describe('units', () => {
  it.each([
    ['°F', 'degF'],
    ['ºF', 'degF'],
    ['deg F', 'degF'],
    ['[degF]', 'degF'],
    ['Fahrenheit', 'degF'],
    ['℃', 'degC'],
    ['Cel', 'degC'],
    ['°C', 'degC'],
    ['Â°C', 'degC'],
    ['\ufffdF', 'degF'],
    ['psi', 'psig'],
    ['PSI(g)', 'psig'],
    ['psia', 'psia'],
    ['bar', 'bar'],
    ['bar(a)', 'bara'],
    ['barg', 'barg'],
    ['kPa', 'kPa'],
    ['MPa', 'MPa'],
    ['MPa(G)', 'MPag'],
    ['hPa', 'mbar'],
    ['kg/cm²', 'kgfcm2'],
    ['kgf/cm2G', 'kgfcm2g'],
    ['%', 'percent'],
    ['%RH', 'percent'],
    ['kW', 'kW'],
    ['Δ°F', 'deltaF'],
    ['K', 'K'],
    ['min', 'min'],
  ])('%s is %s', (text, unit) => expect(unitNamed(text)).toBe(unit));

  it.each(['', 'air', 'inHg', 'M01', 'x'.repeat(60)])('“%s” is none', (text) =>
    expect(unitNamed(text)).toBeNull(),
  );

  it.each([
    ['M01 air A (°F)', 'degF'],
    ['a01AirTempDegF1', 'degF'],
    ['M01_air_DegC_left', 'degC'],
    ['M01 air A [degC]', 'degC'],
    ['Suction psig', 'psig'],
    ['Suction, bar', 'bar'],
    ['suction_psig', 'psig'],
    ['Suction pressure [MPa(G)]', 'MPag'],
    ['Suction kgf/cm2', 'kgfcm2'],
    ['Air temp_C', 'degC'],
    ['tempF', 'degF'],
    ['Air temperature (F)', 'degF'],
    ['Level %', 'percent'],
    ['power_W', 'W'],
    ['Air °F', 'degF'],
    ['supplyAir1DegC', 'degC'],
    ['returnAirDegF', 'degF'],
    ['mtSuctionPressureBar', 'bar'],
    ['valvePositionPct', 'percent'],
    ['Superheat (K)', 'K'],
    ['Suction (psi) avg', 'psig'],
  ])('%s is in %s', (header, unit) => expect(unitInHeader(header)).toBe(unit));

  it.each([
    ['Air 1 (0.1 °F)', '0.1 °F'],
    ['Air 1 [1/10 °C]', '1/10 °C'],
    ['Suction psig x10', 'psig x10'],
    ['Air °F*100', '°F*100'],
  ])('%s is in tenths or hundredths', (header, unit) => {
    expect(unitInHeader(header)).toBeNull();
    expect(unconvertedUnit(header)).toBe(unit);
    expect(unitPart(header)).toMatchObject({ written: unit, parts: unit.includes('100') ? 100 : 10 });
  });

  it.each([
    'M01 air A',
    'Probe C',
    'Compressor (A)',
    'Case F',
    'Rack K',
    'Valve V',
    'S1 h',
    'Fan min',
    'air (left end)',
    'Suction Press. (Rack A)',
    'Discharge Press. (Rack C)',
    'Supply Air R',
    'saladBar',
  ])('%s names no unit', (header) =>
    expect(unitInHeader(header)).toBe(header === 'Compressor (A)' ? 'A' : null),
  );
});
