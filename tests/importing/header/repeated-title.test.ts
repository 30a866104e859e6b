import { describe, expect, it } from 'vitest';
import { normalized, readContent } from '../support.ts';

const header = 'Time,M01 air A (°F),M01 air B (°F),M01 defrost';
const rows = ['34.5,35.1,ON', '34.6,35.2,OFF', '34.7,35.0,OFF', '34.8,35.3,ON'].map(
  (cells, at) => `2026-09-12 00:0${at}:00,${cells}`,
);
const title = 'Larkspur,Larkspur,Larkspur,Larkspur';
const pointsBelow = async (...lines: string[]): Promise<string[]> =>
  (await readContent([...lines, ...rows, ''].join('\n'))).columns.map(({ point }) => point);

describe('a title that stands in every column', () => {
  it('is no part of the names, above the header or below it', async () => {
    const plain = normalized(await readContent([header, ...rows, ''].join('\n')));
    for (const lines of [
      [title, header],
      [header, title],
    ]) {
      expect(normalized(await readContent([...lines, ...rows, ''].join('\n')))).toBe(plain);
    }
  });

  it('is told from a group over the columns, which leaves the times out', async () => {
    expect(await pointsBelow(',M01,M01,M01', 'Time,air A,air B,defrost')).toEqual([
      'M01 air A',
      'M01 air B',
      'M01 defrost',
    ]);
  });
});
