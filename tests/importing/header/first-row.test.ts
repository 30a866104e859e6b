import { describe, expect, it } from 'vitest';
import { normalized, onlyReport, readContent } from '../support.ts';

const header = 'Time,M01 air A,M01 valve';
const rows = ['34.5,ON', '34.6,OFF', '34.7,ON', '34.8,OFF'].map(
  (cells, at) => `2026-09-12 00:0${at}:00,${cells}`,
);
const readWithFirst = (first: string, names = header) =>
  readContent(`${[names, first, ...rows.slice(1)].join('\n')}\n`, { zone: 'UTC' });

describe('a damaged row directly below the header', () => {
  it.each([
    ['with a year that cannot be', '3026-09-12 00:00:00,34.5,ON'],
    ['with a month that cannot be', '2026-19-12 00:00:00,34.5,ON'],
    ['with a delimiter too many', '2026,09-12 00:00:00,34.5,ON'],
    ['with a delimiter too few', '2026-09-12 00:00:00-34.5,34.5'],
  ])('%s is counted and named, not passed over', async (_, first) => {
    const readings = await readWithFirst(first);
    const { rows: met, rowsRejected, values, valuesRejected, issues } = onlyReport(readings);
    expect([met, rowsRejected]).toEqual([4, 1]);
    expect(values - valuesRejected).toBe(6);
    expect(issues[0]).toMatchObject({ line: 2, count: 1 });
    expect(issues[0]!.message).toContain(first);
    expect(normalized(readings)).toContain('2026-09-12T00:01:00Z,M01 air A,34.6,');
  });

  it('is no header, though it holds words and no numbers', async () => {
    const states = [
      'Time,M01 valve,M01 fan',
      '2026-19-12 00:00:00,ON,OFF',
      '2026-09-12 00:01:00,ON,OFF',
      '2026-09-12 00:02:00,OFF,ON',
      '2026-09-12 00:03:00,ON,ON',
    ];
    const readings = await readContent(`${states.join('\n')}\n`, { zone: 'UTC' });
    expect(readings.columns.map(({ point }) => point)).toEqual(['M01 valve', 'M01 fan']);
    expect(onlyReport(readings)).toMatchObject({ rows: 4, rowsRejected: 1, values: 8, valuesRejected: 2 });
  });
});
