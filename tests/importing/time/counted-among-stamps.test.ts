import { describe, expect, it } from 'vitest';
import { isoTime, type PlainRow, partsOf, plainRows, stepMs, two, written } from '../damaged/plain-log.ts';
import { codesOf, normalized, normalizedContent, onlyReport, readContent } from '../support.ts';

const dayMs = 86_400_000;
const counted = (wallMs: number): string => (wallMs / dayMs + 25_569).toFixed(6);
const dayFirst = (wallMs: number): string => {
  const { day, month, year, hour, minute } = partsOf(wallMs);
  return `${two(day)}/${two(month)}/${year} ${two(hour)}:${two(minute)}`;
};
const from = (firstMs: number): PlainRow[] =>
  plainRows().map((row, at) => ({ ...row, wallMs: firstMs + at * stepMs }));

describe('stamps that a spreadsheet turned into counts of days, in some rows', () => {
  it.each([
    { name: 'every other row', isCounted: (wallMs: number) => (wallMs / stepMs) % 2 === 0 },
    { name: 'the first half', isCounted: (wallMs: number) => wallMs < plainRows()[432]!.wallMs },
    { name: 'the second half', isCounted: (wallMs: number) => wallMs >= plainRows()[432]!.wallMs },
  ])('are read, and the report says so: $name', async ({ isCounted }) => {
    for (const write of [isoTime, dayFirst]) {
      const time = (wallMs: number): string => (isCounted(wallMs) ? counted(wallMs) : write(wallMs));
      const readings = await readContent(written({ time }));
      expect(normalized(readings) === (await normalizedContent(written()))).toBe(true);
      expect(codesOf(readings)).toContain('counted-days-among-stamps');
    }
  });

  it.each(['wide', 'long'])(
    'get day and month back where it took them the wrong way round: %s',
    async (layout) => {
      const rows = from(Date.UTC(2026, 9, 11));
      const time = (wallMs: number): string => {
        const { day, month } = partsOf(wallMs);
        if (day > 12) return dayFirst(wallMs);
        return counted(Date.UTC(2026, day - 1, month) + (wallMs % dayMs));
      };
      const content =
        layout === 'wide'
          ? written({ time }, rows)
          : [
              'time,point,value',
              ...rows.map((row) => `${time(row.wallMs)},M01 air A (°F),${row.cells[0]}`),
            ].join('\n');
      const expected =
        layout === 'wide'
          ? written({}, rows)
          : [
              'time,point,value',
              ...rows.map((row) => `${isoTime(row.wallMs)},M01 air A (°F),${row.cells[0]}`),
            ].join('\n');
      const readings = await readContent(content);
      expect(normalized(readings) === (await normalizedContent(expected))).toBe(true);
      expect(onlyReport(readings).choices).toContainEqual(
        expect.objectContaining({ chosen: 'day and month exchanged' }),
      );
    },
  );
});
