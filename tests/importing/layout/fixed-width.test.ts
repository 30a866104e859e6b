import { describe, expect, it } from 'vitest';
import { header, written } from '../damaged/plain-log.ts';
import { codesOf, normalized, normalizedContent, onlyReport, readContent } from '../support.ts';

const inColumns = (pad: (cell: string, at: number) => string, between = '') => ({
  changeLines: (lines: string[]) => lines.map((line) => line.split(',').map(pad).join(between)),
});

describe('cells that blanks alone part', () => {
  it.each([
    { name: 'at the left of their columns', writing: inColumns((cell) => cell.padEnd(21)) },
    {
      name: 'at the right',
      writing: inColumns((cell, at) => (at === 0 ? cell.padEnd(20) : cell.padStart(20))),
    },
    {
      name: 'without blanks behind',
      writing: {
        changeLines: (lines: string[]) =>
          inColumns((cell) => cell.padEnd(21))
            .changeLines(lines)
            .map((line) => line.trimEnd()),
      },
    },
    {
      name: 'over a ruled line',
      writing: {
        changeLines: (lines: string[]) => {
          const [head, ...rest] = inColumns((cell) => cell.padEnd(20), ' ').changeLines(lines);
          return [head!, Array.from({ length: 8 }, () => '-'.repeat(20)).join(' '), ...rest];
        },
      },
    },
  ])('are read: $name', async ({ writing }) => {
    const readings = await readContent(written(writing));
    expect(normalized(readings) === (await normalizedContent(written()))).toBe(true);
    expect(onlyReport(readings).choices[0]).toMatchObject({
      about: 'cells of a row',
      override: '--delimiter',
    });
  });

  it('are read where one blank stands between them', async () => {
    const headers = header.map((name) => name.replaceAll(' ', '_'));
    const filled = (value: number | string | null): string => String(value ?? 'NaN');
    const readings = await readContent(written({ headers, cell: filled, delimiter: ' ' }));
    const expected = await readContent(written({ headers, cell: filled }));
    expect(normalized(readings) === normalized(expected)).toBe(true);
  });

  it('are left out, and named, in a row that does not fit', async () => {
    const writing = inColumns((cell) => cell.padEnd(21));
    const lines = written(writing).split('\n');
    const content = lines.with(100, lines[100]!.replace(/ {4}/u, '')).join('\n');
    const readings = await readContent(content);
    expect(onlyReport(readings).rows).toBe(864);
    expect(codesOf(readings).filter((code) => /^(?:row|value|time)-/u.test(code))).not.toEqual([]);
  });
});
