import { describe, expect, test } from 'vitest';
import { endedByProbeLetter } from '../../../src/importing/header/probe-letters.ts';
import { readContent } from '../support.ts';

describe('a letter that tells the probes of one place apart', () => {
  test.each([
    [['case temp a', 'case temp b', 'case temp c']],
    [['Supply Air L', 'Supply Air C', 'Supply Air R']],
    [['temp_C', 'temp_D']],
  ])('%s are probes', (headers) => expect([...endedByProbeLetter(headers)]).toEqual(headers));

  test.each([[['temp_C', 'temp_F']], [['M01 temp_C', 'M02 temp_C', 'M01 valve']], [['air L', 'deck R']]])(
    '%s are not told apart by a letter',
    (headers) => expect(endedByProbeLetter(headers).size).toBe(0),
  );
});

const clock = (row: number): string => `2026-09-01T00:${String(row).padStart(2, '0')}:00Z`;
const wide = (names: readonly string[]): string =>
  [
    `time,${names.join(',')}`,
    ...Array.from({ length: 40 }, (_, row) => [clock(row), ...names.map(() => 34 + (row % 4))].join(',')),
  ].join('\n');
const long = (names: readonly string[]): string =>
  [
    'time,point,value',
    ...Array.from({ length: 40 }, (_, row) =>
      names.map((name) => `${clock(row)},${name},${34 + (row % 4)}`),
    ).flat(),
  ].join('\n');

describe.each([
  ['wide', wide],
  ['long', long],
])('in a %s export', (_, written) => {
  const unitsOf = async (names: readonly string[]) =>
    (await readContent(written(names))).columns.map(({ unit }) => unit);

  test('probe letters are no unit', async () => {
    expect(await unitsOf(['A1 temp a', 'A1 temp b', 'A1 temp c'])).toEqual([null, null, null]);
    expect(await unitsOf(['A1 air L', 'A1 air C', 'A1 air R'])).toEqual([null, null, null]);
    expect(await unitsOf(['A1 temp (°F) b', 'A1 temp (°F) c'])).toEqual(['degF', 'degF']);
  });

  test('a unit that every name ends in stays one', async () => {
    expect(await unitsOf(['A1 temp_C', 'A2 temp_C'])).toEqual(['degC', 'degC']);
  });
});
