import fc from 'fast-check';
import { expect, test } from 'vitest';
import { normalizedContent } from '../support.ts';

const names = ['M01 air', 'M01, end', '"M02"', 'M03  spaced', 'M04'];
const two = (count: number): string => String(count).padStart(2, '0');
/** Day first; only the 13th on says so, when the first rows were long read. */
const stamps = Array.from({ length: 12 }, (_, k) => `${two(8 + k)}/09/2026 ${two(k)}:15`);
const quoted = (cell: string): string => `"${cell.replaceAll('"', '""')}"`;

test('a row is read the same whether it repeats the writing of the one above or not', async () => {
  const row = fc.record({
    value: fc.integer({ min: -400, max: 900 }).map((tenths) => (tenths / 10).toFixed(1)),
    writing: fc.constantFrom('bare', 'bare', 'bare', 'quoted', 'padded', 'word'),
  });
  const rows = stamps.length * names.length;
  await fc.assert(
    fc.asyncProperty(fc.array(row, { minLength: rows, maxLength: rows }), async (drawn) => {
      const cells = drawn.map(({ value, writing }, k) => ({
        writing,
        cells: [
          stamps[Math.floor(k / names.length)]!,
          names[k % names.length]!,
          writing === 'word' ? 'n/a' : value,
        ],
      }));
      const header = 'time,point,value';
      const plain = [header, ...cells.map((one) => one.cells.map(quoted).join(','))].join('\n');
      const mixed = [
        header,
        ...cells.map(({ writing, cells: [time, point, value] }) => {
          const name = /[",]/u.test(point!) ? quoted(point!) : point!;
          if (writing === 'quoted') return [time!, point!, value!].map(quoted).join(',');
          return writing === 'padded' ? `${time} , ${name} ,${value} ` : `${time},${name},${value}`;
        }),
      ].join('\n');
      expect(await normalizedContent(`${mixed}\n`)).toBe(await normalizedContent(`${plain}\n`));
    }),
    { numRuns: 60 },
  );
});
