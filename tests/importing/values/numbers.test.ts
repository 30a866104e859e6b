import { describe, expect, it } from 'vitest';
import { readCell } from '../../../src/importing/values/cell-reader.ts';
import { normalized, onlyReport, readContent } from '../support.ts';

const value = (text: string, mark: '.' | ',' = '.'): number | string => {
  const { kind, value: number } = readCell(text, mark);
  return kind === 'number' ? number : kind;
};

describe('numbers as people write them', () => {
  it.each([
    ['3.4', 3.4],
    ['-3.4', -3.4],
    ['+3.4', 3.4],
    ['3.4-', -3.4],
    ['1,234.5-', -1234.5],
    ['.5', 0.5],
    ['-.5', -0.5],
    ['5.', 5],
    ['007', 7],
    ['\u22123.4', -3.4],
    ['\u20133.4', -3.4],
    ['1e3', 1000],
    ['1.5E-2', 0.015],
    ['3,4', 3.4],
    ['1,234.5', 1234.5],
    ['1.234,5', 1234.5],
    ['1 234,5', 1234.5],
    ['1\u202f234,5', 1234.5],
    ["1'234.5", 1234.5],
    ['1,234,567', 1_234_567],
    ['1.234.567', 1_234_567],
    ['1,234,567.8', 1_234_567.8],
    ['"3.4"', 3.4],
    ["'3.4", 3.4],
    ['="3.4"', 3.4],
    ['  3.4 ', 3.4],
    ['36.4 °F', 36.4],
    ['36.4°F', 36.4],
    ['36.4 deg F', 36.4],
    ['-2,5 °C', -2.5],
    ['45 psig', 45],
    ['38 %', 38],
    ['1,234.5 kPa', 1234.5],
    ['12345678901234567890', Number('12345678901234567890')],
  ])('%s is %f', (text, expected) => expect(value(text)).toBe(expected));

  it.each([
    ['1,23,4', 'text'],
    ['1.2.3', 'text'],
    ['12 34', 'text'],
    ['3.4.', 'text'],
    ['36.4 bananas', 'text'],
    ['0x1F', 'text'],
    ['--3', 'text'],
    ['1e999', 'overflow'],
    ['NaN', 'missing'],
    ['---', 'missing'],
    ['n/a', 'missing'],
    ['1.#INF', 'fault'],
    ['#VALUE!', 'fault'],
    ['Fail', 'fault'],
    ['OFF', 'off'],
    ['Ein', 'on'],
    ['Geschlossen', 'off'],
    ['Def', 'defrost'],
    ['', 'empty'],
    ['\u200b', 'empty'],
    ['\u2014', 'missing'],
  ])('%s is %s, no number', (text, kind) => expect(value(text)).toBe(kind));

  it('with a point before three digits follow the rest of the file', () => {
    expect(value('1.234', '.')).toBe(1.234);
    expect(value('1.234', ',')).toBe(1234);
    expect(value('1,234', '.')).toBe(1234);
    expect(value('1,234', ',')).toBe(1.234);
    expect(value('0,234', '.')).toBe(0.234);
  });
});

const minute = (at: number): string => `2026-09-01 00:${String(at).padStart(2, '0')}`;
const csv = (delimiter: string, cells: readonly string[]): string =>
  ['Time', 'Discharge psig'].join(delimiter) +
  cells.map((cell, at) => `\n${minute(at)}${delimiter}${cell}`).join('');

describe('the decimal mark of a file', () => {
  const valuesOf = async (content: string, overrides = {}) => [
    ...(await readContent(content, { zone: 'UTC', overrides })).columns[0]!.values,
  ];

  it('is the comma where numbers such as 3,4 stand, and points then part thousands', async () => {
    expect(await valuesOf(csv(';', ['1.234,5', '998,4', '1.001', '999,9']))).toEqual([
      1234.5, 998.4, 1001, 999.9,
    ]);
  });

  it('is the point where numbers such as 3.4 stand, and commas then part thousands', async () => {
    expect(await valuesOf(csv(',', ['"1,234.5"', '998.4', '"1,001"', '999.9']))).toEqual([
      1234.5, 998.4, 1001, 999.9,
    ]);
  });

  it('that could be either is reported with the flag for the other', async () => {
    const content = csv(';', ['1,234', '1,235', '1,236', '1,237']);
    expect(await valuesOf(content)).toEqual([1.234, 1.235, 1.236, 1.237]);
    const { choices } = onlyReport(await readContent(content));
    expect(choices.find(({ about }) => about === 'decimal mark')).toMatchObject({
      chosen: 'comma',
      override: '--decimal-point',
    });
    expect(await valuesOf(content, { decimalComma: false })).toEqual([1234, 1235, 1236, 1237]);
  });

  it('is never changed silently where one number is written the other way', async () => {
    const readings = await readContent(csv(';', ['3.4', '3.5', '3,6', '3.7']), { zone: 'UTC' });
    expect([...readings.columns[0]!.values]).toEqual([3.4, 3.5, 3.6, 3.7]);
    expect(onlyReport(readings).issues.map(({ code }) => code)).toEqual(['decimal-marks-mixed']);
  });
});

describe('numbers in the tidy form', () => {
  it('have a decimal point and no exponent', async () => {
    const content = `Time,a,b,c\n${minute(0)},0.0000001,123456789012345680000000,-0.00\n${minute(1)},2.5,1.5,7\n`;
    const rows = normalized(await readContent(content, { zone: 'UTC' })).split('\n');
    expect(rows[1]).toBe('2026-09-01T00:00:00Z,a,0.0000001,');
    expect(rows[2]).toBe(`2026-09-01T00:00:00Z,b,${BigInt(Number('123456789012345680000000'))},`);
    expect(rows[3]).toBe('2026-09-01T00:00:00Z,c,0,');
  });
});
