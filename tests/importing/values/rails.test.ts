import { describe, expect, it } from 'vitest';
import { columnProfile } from '../../../src/importing/values/column-profile.ts';
import { findRails } from '../../../src/importing/values/rails.ts';
import { findScaleChange } from '../../../src/importing/values/unit-change.ts';
import type { ExportUnit } from '../../../src/units/export-units.ts';

const air = (count: number, level = 36): number[] =>
  Array.from({ length: count }, (_, at) =>
    Number((level + 2 * Math.sin(at / 3) + (at % 7) * 0.1).toFixed(1)),
  );
const rails = (values: readonly number[], unit: ExportUnit | null = 'degF') => {
  const column = Float64Array.from(values);
  const found = findRails(column, columnProfile(column), unit);
  return { values: [...found.values].sort((a, b) => a - b), notConnected: found.notConnected };
};
const withLevel = (level: number, unit: ExportUnit | null = 'degF', at = 36) =>
  rails([...air(60, at), ...new Array<number>(9).fill(level), ...air(60, at)], unit).values;

describe('ends of the scale', () => {
  it.each([-40, -99, -58, 185, 327.67, 999, 32_767, -99_999])('%d amid air at 36 °F is none', (level) =>
    expect(withLevel(level)).toEqual([level]),
  );
  it.each([-40, 85, 150, 999.9])('%d amid air at 2 °C is none', (level) =>
    expect(withLevel(level, 'degC', 2)).toEqual([level]),
  );
  it.each([999, -9999, 32_767])('%d amid pressures is none', (level) =>
    expect(withLevel(level, 'psig', 45)).toEqual([level]),
  );
  it.each([-40, 999, -99_999])('%d in a column without a unit is none', (level) =>
    expect(withLevel(level, null)).toEqual([level]),
  );

  it('several in one column are all found', () => {
    expect(
      rails([...air(60), -40, -40, ...air(20), 999, 999, ...air(20), 327.67, 327.67, ...air(9)]).values,
    ).toEqual([-40, 327.67, 999]);
  });

  it('are what behaves so, not what stands in a list', () => {
    const towardsForty = Array.from({ length: 120 }, (_, at) => -36 + 4.5 * Math.sin(at / 9));
    expect(rails([...towardsForty.map((value) => Math.max(-40, Number(value.toFixed(1))))]).values).toEqual(
      [],
    );
    const humidity = Array.from({ length: 300 }, (_, at) => 940 + (at % 80));
    expect(rails(humidity, null).values).toEqual([]);
  });

  it.each([
    ['a set point that moves', [...new Array<number>(50).fill(36), ...new Array<number>(50).fill(20)]],
    ['a defrost', [...air(50), 40, 46, 50, 55, 55, 55, 55, 50, 44, 40, ...air(50)]],
    ['one spike', [...air(50), 60, ...air(50)]],
    ['a frozen case', air(100, -22)],
  ])('%s is none of them', (_name, values) => expect(rails(values).values).toEqual([]));

  it('of a superheat in kelvin are readings, down to the 0 of a coil that floods', () => {
    const superheat = Array.from({ length: 400 }, (_, at) =>
      Number(Math.max(0, 4 + 6 * Math.sin(at / 5)).toFixed(1)),
    );
    expect(rails(superheat, 'K').values).toEqual([]);
    expect(rails([...superheat, 999, 999, 999, ...superheat], 'K').values).toEqual([999]);
    expect(rails([...air(60, 276), 0, 0, 0, ...air(60, 276)], 'K').values).toEqual([0]);
  });

  it('of a power that is off are readings', () => {
    expect(
      rails(
        Array.from({ length: 90 }, (_, at) => (at % 10 < 5 ? 0 : 1200 + at)),
        'W',
      ).values,
    ).toEqual([]);
  });

  it('throughout a column are a channel that is not connected', () => {
    expect(rails(new Array<number>(40).fill(-40))).toEqual({ values: [-40], notConnected: true });
    expect(rails(new Array<number>(40).fill(32_767), null)).toEqual({ values: [32_767], notConnected: true });
    expect(rails(new Array<number>(40).fill(0.93), null)).toEqual({ values: [], notConnected: false });
    expect(rails([-98_509.069, -98_628.695, -98_654.277, -98_509.069], null).notConnected).toBe(true);
  });
});

describe('a change of scale', () => {
  const scale = (values: readonly number[], unit: ExportUnit | null = null) => {
    const column = Float64Array.from(values);
    return findScaleChange(column, columnProfile(column), unit);
  };
  const celsius = (values: readonly number[]): number[] =>
    values.map((value) => Number(((value - 32) / 1.8).toFixed(1)));

  it('is found where level and step fit F = 1.8 C + 32', () => {
    expect(scale([...air(60), ...celsius(air(60))])).toEqual({ from: 60, before: 'degF', after: 'degC' });
    expect(scale([...celsius(air(60)), ...air(60)])).toEqual({ from: 60, before: 'degC', after: 'degF' });
    expect(scale([...new Array<number>(40).fill(36), ...new Array<number>(40).fill(2.2)])).toMatchObject({
      from: 40,
    });
  });

  it.each([
    ['a set point that moves', [...new Array<number>(40).fill(36), ...new Array<number>(40).fill(28)]],
    ['a case that warms at once', [...air(60), ...air(60, 50)]],
    ['a defrost', [...air(60), 48, 55, 60, 60, 52, 44, ...air(60)]],
  ])('%s is none', (_name, values) => expect(scale(values)).toBeNull());
});
