import { describe, expect, it } from 'vitest';
import { pointName } from '../../../src/diagnosis/wording/clauses.ts';
import { tokensOf } from '../../../src/importing/naming/tokens.ts';
import { codesOf, readContent } from '../support.ts';

const stamps = Array.from({ length: 60 }, (_, minute) => `2026-09-01 08:${String(minute).padStart(2, '0')}`);
const tenths = stamps.map((_, at) => 20 + Math.round(15 * Math.sin(at / 5)));
const read = (header: string, cell: (tenth: number, at: number) => string) =>
  readContent(
    [`time,${header}`, ...tenths.map((tenth, at) => `${stamps[at]},${cell(tenth, at)}`)].join('\n'),
  );

it('is no word of the name', () => {
  expect(tokensOf('M01 air A (°F x10)').map(({ text }) => text)).toEqual(['m', '01', 'air', 'a']);
  expect(tokensOf('M01 air 2 0.1 °C').map(({ text }) => text)).toEqual(['m', '01', 'air', '2']);
  expect(pointName('M01 air A (°F x10)')).toBe('M01 air A');
  expect(pointName('M01 air A (0.1 °C)')).toBe('M01 air A');
});

describe('a header that names a part of a unit', () => {
  it.each([
    ['M01 air A (0.1 °C)', 'degC'],
    ['M01 air A °C x10', 'degC'],
    ['M01 air A [degF*10]', 'degF'],
    ['S1 suction psig x10', 'psig'],
  ])('is divided out of whole numbers: %s', async (header, unit) => {
    const readings = await read(header, String);
    const [column] = readings.columns;
    expect(column!.unit).toBe(unit);
    expect([...column!.values]).toEqual(tenths.map((tenth) => tenth / 10));
    expect(codesOf(readings)).toEqual(['unit-part']);
  });

  it('tells hundredths from tenths', async () => {
    const readings = await read('M01 air A (1/100 °C)', String);
    expect([...readings.columns[0]!.values]).toEqual(tenths.map((tenth) => tenth / 100));
  });

  it('is the step of the log where the numbers have decimals', async () => {
    const readings = await read('M01 air A (0.1 °C)', (tenth) => (tenth / 10).toFixed(1));
    expect(readings.columns[0]!.unit).toBe('degC');
    expect([...readings.columns[0]!.values]).toEqual(tenths.map((tenth) => tenth / 10));
    expect(codesOf(readings)).toEqual([]);
  });

  it('is no unit where it says tenfold and the numbers have decimals: nobody can tell', async () => {
    const readings = await read('M01 air A °C x10', (tenth) => (tenth / 10).toFixed(1));
    expect(readings.columns[0]!.unit).toBeNull();
    expect(codesOf(readings)).toEqual(['unit-not-converted']);
  });

  it('is divided before a broken probe is looked for', async () => {
    const readings = await read('M01 air A °C x10', (tenth, at) => (at > 40 ? '32767' : String(tenth)));
    expect(codesOf(readings)).toEqual(['probe-rail', 'unit-part']);
    expect(Number.isNaN(readings.columns[0]!.values[50]!)).toBe(true);
  });
});
