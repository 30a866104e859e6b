import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { rowCells } from '../../src/importing/dialect/row-cells.ts';
import { ImportRefusal } from '../../src/importing/readings.ts';
import { type Dialect, rowAt } from '../../src/importing/scan/row-span.ts';
import { NumberBytes } from '../../src/importing/values/number-bytes.ts';
import { written } from '../importing/damaged/plain-log.ts';
import {
  memorySource,
  normalized,
  normalizedContent,
  onlyReport,
  readContent,
  readSources,
} from '../importing/support.ts';

/** Seeds that once failed are kept in `examples`; every run replays them. */
const small = { numRuns: 150 } as const;

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

describe('numbers from bytes', () => {
  const read = (text: string): number => {
    const numbers = new NumberBytes();
    const bytes = bytesOf(`${text}\n`);
    const value = numbers.read(bytes, 0, 46);
    return numbers.next === bytes.length - 1 ? value : Number.NaN;
  };

  it('are those that Number gives, to the last bit', () => {
    const digits = (least: number, most: number) =>
      fc.stringMatching(new RegExp(`^[0-9]{${least},${most}}$`, 'u'));
    fc.assert(
      fc.property(
        fc.constantFrom('', '-'),
        digits(1, 12),
        fc.option(digits(1, 8)),
        (sign, whole, decimals) => {
          const text = `${sign}${whole}${decimals === null ? '' : `.${decimals}`}`;
          const value = read(text);
          if ((whole + (decimals ?? '')).length <= 15) expect(Object.is(value, Number(text))).toBe(true);
          else expect(Number.isNaN(value) || Object.is(value, Number(text))).toBe(true);
        },
      ),
      { numRuns: 2000 },
    );
  });
});

describe('rows from bytes', () => {
  const cellOf = fc.stringMatching(/^[a-z0-9 ,;"'.\-\n]{0,8}$/u);
  const rowsOf = fc.array(fc.array(cellOf, { minLength: 2, maxLength: 5 }), { minLength: 1, maxLength: 8 });
  const dialect: Dialect = { delimiter: 44, quote: 34 };

  it('are those that papaparse wrote and reads', () => {
    fc.assert(
      fc.property(rowsOf, (rows) => {
        const text = `${Papa.unparse(rows, { newline: '\n' })}\n`;
        const bytes = bytesOf(text);
        const found: string[][] = [];
        for (let at = 0; at < bytes.length; ) {
          const row = rowAt(bytes, at, bytes.length, true, dialect)!;
          found.push(rowCells(bytes, row, dialect));
          at = row.next;
        }
        expect(found).toEqual(rows);
      }),
      small,
    );
  });
});

const value = fc.oneof(
  fc.double({ min: -500, max: 500, noNaN: true }).map((number) => number.toFixed(2)),
  fc.integer({ min: -99, max: 99 }).map(String),
  fc.constantFrom(
    '',
    'ON',
    'OFF',
    '---',
    'Off',
    '3.4 °F',
    ' 7 ',
    '1e2',
    '+5',
    'Fail',
    'x"y',
    "it's",
    '\u22123.5',
  ),
);
const table = fc.array(fc.array(value, { minLength: 3, maxLength: 3 }), { minLength: 2, maxLength: 40 });

function csvOf(rows: readonly (readonly string[])[], quoteAll: boolean): string {
  const stamped = rows.map((cells, index) => [
    new Date(Date.UTC(2026, 8, 1) + index * 60_000).toISOString(),
    ...cells,
  ]);
  return `${Papa.unparse([['time', 'a', 'b', 'c'], ...stamped], { quotes: quoteAll, newline: '\n' })}\n`;
}

const outcome = async (content: string | Uint8Array, chunkLength = 65_536): Promise<string> => {
  try {
    return normalized(await readSources([memorySource('export.csv', content, chunkLength)]));
  } catch (error) {
    if (error instanceof ImportRefusal) return error.message;
    throw error;
  }
};

describe('the path for plain rows and the path through papaparse', () => {
  it('come to the same readings', async () => {
    await fc.assert(
      fc.asyncProperty(table, async (rows) => {
        expect(await outcome(csvOf(rows, true))).toBe(await outcome(csvOf(rows, false)));
        // A doubled quote in one more column sends every row through papaparse.
        const odd = rows.map((cells) => [...cells, 'a "remark", here']);
        const stamped = odd.map((cells, index) => [
          new Date(Date.UTC(2026, 8, 1) + index * 60_000).toISOString(),
          ...cells,
        ]);
        const through = `${Papa.unparse([['time', 'a', 'b', 'c', 'note'], ...stamped], { newline: '\n' })}\n`;
        expect(await outcome(through)).toBe(await outcome(csvOf(rows, false)));
      }),
      small,
    );
  });
});

describe('any chunking of the bytes', () => {
  const whole = bytesOf(written({ changeLines: (lines) => lines.slice(0, 120) }));

  it('gives the same log', async () => {
    const expected = await outcome(whole);
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: 3000 }), async (chunkLength) => {
        expect(await outcome(whole, chunkLength)).toBe(expected);
      }),
      { numRuns: 40, examples: [[1], [2], [7]] },
    );
  });

  it('gives the same log when line ends, quotes and wide characters are cut', async () => {
    const text = written({
      lineEnd: (line) => ['\r\n', '\n', '\r'][line % 3]!,
      cell: (cell) => (cell === 'ON' ? '"O""N"' : cell === null ? '"—"' : `"${cell}"`),
      changeLines: (lines) => lines.slice(0, 60),
    });
    const expected = await outcome(text);
    for (let chunkLength = 1; chunkLength < 24; chunkLength++)
      expect(await outcome(text, chunkLength)).toBe(expected);
  });
});

describe('what was read', () => {
  it('is read again from its own tidy form', async () => {
    await fc.assert(
      fc.asyncProperty(table, async (rows) => {
        // A long export has its points in the order of their first readings, so the first row is full.
        const once = await outcome(csvOf([['1.25', '2.5', '7.75'], ...rows], false));
        if (!once.startsWith('time,')) return;
        const lines = once.split('\n').slice(1, -1);
        if (new Set(lines.map((line) => line.split(',')[1])).size < 2) return;
        expect(await outcome(once)).toBe(once);
      }),
      small,
    );
  });

  it('and what was left out make up what was there', async () => {
    await fc.assert(
      fc.asyncProperty(table, async (rows) => {
        const text = csvOf(rows, false);
        const readings = await readContent(text).catch(() => null);
        if (readings === null) return;
        const report = onlyReport(readings);
        const cells = rows.flat().filter((cell) => cell.trim() !== '').length;
        expect(report.rows).toBe(rows.length);
        expect(report.values).toBe(cells);
        expect((await normalizedContent(text)).split('\n').length - 2).toBe(
          report.values - report.valuesRejected,
        );
      }),
      small,
    );
  });
});

describe('random bytes', () => {
  it('are read or refused in a sentence, never otherwise', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.uint8Array({ maxLength: 400 }),
        fc.integer({ min: 1, max: 64 }),
        async (bytes, chunkLength) => {
          expect(await outcome(bytes, chunkLength)).toMatch(/^time,point|\.$/u);
        },
      ),
      { numRuns: 400 },
    );
  });

  it('inside a good log are read or refused, never otherwise', async () => {
    const good = bytesOf(written({ changeLines: (lines) => lines.slice(0, 40) }));
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.tuple(fc.nat(good.length - 1), fc.integer({ min: 0, max: 255 })), {
          minLength: 1,
          maxLength: 30,
        }),
        async (changes) => {
          const bytes = good.slice();
          for (const [at, byte] of changes) bytes[at] = byte;
          expect(await outcome(bytes)).toMatch(/^time,point|\.$|\]$/u);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('of the letters that dialects are made of are read or refused', async () => {
    const marks = fc.array(
      fc.constantFrom(
        '"',
        "'",
        ',',
        ';',
        '\t',
        '|',
        '\n',
        '\r',
        '1',
        '.',
        '-',
        ' ',
        '2026-09-01 06:00',
        'ON',
        'time',
        '\0',
        '\ufeff',
      ),
      {
        maxLength: 120,
      },
    );
    await fc.assert(
      fc.asyncProperty(marks, async (parts) => {
        expect(await outcome(parts.join(''))).toMatch(/^time,point|\.$|\]$/u);
      }),
      { numRuns: 400 },
    );
  });
});
