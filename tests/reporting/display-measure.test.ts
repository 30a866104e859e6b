import { describe, expect, test } from 'vitest';
import type { Measure } from '../../src/model/evidence.ts';
import { displayMeasure, measureTitle } from '../../src/reporting/display-measure.ts';

const american = { units: { temperature: 'degF', pressure: 'psig' }, atmosphere: 101.325 } as const;
const metric = { units: { temperature: 'degC', pressure: 'barg' }, atmosphere: 101.325 } as const;

function measure(value: number, unit: string, changes: Partial<Measure> = {}): Measure {
  return { name: 'level', value, low: null, high: null, unit, ...changes };
}

describe('a measure in the units of the site', () => {
  test.each<[string, Measure, string, string]>([
    ['a temperature', measure(5, 'Cel'), '41.0 °F', '5.0 °C'],
    ['a difference, which knows no 32', measure(5, 'K'), '9.0 °F', '5.0 °C'],
    ['a rate', measure(0.5, 'K/d'), '0.90 °F a day', '0.50 °C a day'],
    ['an absolute pressure', measure(446.06, 'kPa'), '50.0 psig', '3.45 barg'],
    [
      'a pressure difference, to which no atmosphere belongs',
      measure(6.895, 'kPa{difference}'),
      '1.0 psi',
      '0.07 bar',
    ],
    ['minutes', measure(75, 'min'), '75 minutes', '75 minutes'],
    ['starts', measure(9, '{starts}/h'), '9 starts an hour', '9 starts an hour'],
    ['a share', measure(62, '%'), '62 %', '62 %'],
    ['a bare number', measure(0.456, '1'), '0.46', '0.46'],
    ['an unknown value', measure(Number.NaN, 'K'), 'unknown', 'unknown'],
  ])('shows %s', (_, given, inAmerica, inEurope) => {
    expect(displayMeasure(given, american)).toBe(inAmerica);
    expect(displayMeasure(given, metric)).toBe(inEurope);
  });

  test('gives the interval without repeating the unit', () => {
    const slope = measure(0.228, 'K/d', { low: 0.18, high: 0.27 });
    expect(displayMeasure(slope, american)).toBe('0.41 °F a day (0.32 to 0.49)');
  });

  test('says where an interval has no upper end', () => {
    expect(displayMeasure(measure(6, 'd', { low: 2 }), american)).toBe('6 days (2 days at the least)');
    expect(displayMeasure(measure(6, 'd', { low: 2, high: Number.NaN }), american)).toBe('6 days');
  });

  test('keeps both units where the ends of the interval need different ones', () => {
    const age = measure(90, 'min', { low: 30, high: 200 });
    expect(displayMeasure(age, american)).toBe('90 minutes (30 minutes to 3 h 20 min)');
  });
});

test('the name of a measure reads as words', () => {
  expect(measureTitle('defrostOffsetRatio')).toBe('defrost offset ratio');
});
