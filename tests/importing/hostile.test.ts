import { describe, expect, it } from 'vitest';
import { ImportRefusal } from '../../src/importing/readings.ts';
import { written } from './damaged/plain-log.ts';
import { withBoundedWork } from './fuzz/bounded-work.ts';
import { codesOf, normalized, onlyReport, readContent } from './support.ts';

const refusal = async (content: string | Uint8Array): Promise<ImportRefusal> => {
  const outcome = await readContent(content).catch((error: unknown) => error);
  expect(outcome).toBeInstanceOf(ImportRefusal);
  return outcome as ImportRefusal;
};
const bytes = (...values: number[]): Uint8Array =>
  Uint8Array.from([...values, ...new Array<number>(64).fill(1)]);

describe('files that are no exports are refused with what they are', () => {
  const foreign: readonly [string, string | Uint8Array, string, RegExp][] = [
    ['nothing', '', 'file-empty', /is empty/u],
    ['blanks', ' \r\n\r\n', 'file-empty', /is empty/u],
    ['a PNG', bytes(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a), 'foreign-file', /a PNG image/u],
    ['a JPEG', bytes(0xff, 0xd8, 0xff, 0xe0), 'foreign-file', /a JPEG image/u],
    ['a PDF', '%PDF-1.7\n%abc', 'foreign-file', /a PDF document/u],
    ['a workbook', bytes(0x50, 0x4b, 3, 4), 'foreign-file', /workbook/u],
    ['an old workbook', bytes(0xd0, 0xcf, 0x11, 0xe0), 'foreign-file', /\.xls/u],
    [
      'an error page',
      '<!DOCTYPE html>\n<html><body>503 Service Unavailable</body></html>',
      'foreign-file',
      /web page/u,
    ],
    ['a JSON document', '{"error": "not logged in"}', 'foreign-file', /JSON/u],
    ['an XML document', '<?xml version="1.0"?><points/>', 'foreign-file', /XML/u],
    [
      'binary',
      Uint8Array.from({ length: 600 }, (_, at) => (at * 7) % 23),
      'unknown-encoding',
      /binary data/u,
    ],
    ['prose', 'The walk-in was warm again today.\nPlease send somebody.\n', 'no-table', /no table/u],
    ['only delimiters', ',,,,\n,,,,\n'.repeat(500), 'no-table', /no table/u],
    ['a header only', 'Time,M01 air A,M01 air B\n', 'no-readings', /a header but no rows/u],
    [
      'times that count from a start',
      `Start:,2026-09-01 08:15\nElapsed,A\n${['0:00', '0:05', '0:10', '0:15'].map((time) => `${time},1.5`).join('\n')}\n`,
      'no-table',
      /a time of day but no date/u,
    ],
    ['times only', 'Time\n2026-09-01 00:00\n2026-09-01 00:05\n', 'no-table', /no table/u],
    [
      'times with empty columns',
      'Time,A,B\n2026-09-01 00:00,,\n2026-09-01 00:05,,\n',
      'no-readings',
      /none of its 2 rows/u,
    ],
  ];
  it.each(foreign)('%s', async (_name, content, code, sentence) => {
    const { code: found, message } = await refusal(content);
    expect(found).toBe(code);
    expect(message).toMatch(sentence);
    expect(message).toContain('export.csv');
    expect(message).not.toMatch(/\n|at .*\.ts/u);
  });
});

describe('hostile names', () => {
  const names = [
    '__proto__',
    'constructor',
    'toString',
    '=cmd|calc!A1',
    '<script>alert(1)</script>',
    '@SUM(A1)',
    'a,b "c"',
  ];

  it('are names like others', async () => {
    const header = ['Time', ...names.map((name) => `"${name.replaceAll('"', '""')}"`)].join(',');
    const rows = Array.from({ length: 5 }, (_, row) =>
      [`2026-09-01 00:0${row}`, ...names.map((_, at) => `${row + at}.5`)].join(','),
    );
    const readings = await readContent([header, ...rows].join('\n'));
    expect(readings.columns.map(({ point }) => point)).toEqual(names);
    expect(normalized(readings).split('\n').length).toBe(2 + 5 * names.length);
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
  });

  it('are points like others in a long export', async () => {
    const rows = names
      .slice(0, 3)
      .flatMap((name) => [`2026-09-01 00:00,${name},1.5`, `2026-09-01 00:01,${name},2.5`]);
    const readings = await readContent(['time,point,value', ...rows].join('\n'));
    expect(readings.columns.map(({ point }) => point)).toEqual(names.slice(0, 3));
  });

  it('that show nothing are numbered', async () => {
    const readings = await readContent(
      'Time,\u200b,Air\n2026-09-01 00:00,1.5,2.5\n2026-09-01 00:05,1.5,2.5\n',
    );
    expect(readings.columns.map(({ point }) => point)).toEqual(['column 2', 'Air']);
  });
});

describe('shapes that no export should have', () => {
  const heapMegabytes = (): number => process.memoryUsage().heapUsed / 1e6;

  it('a line of 3 MB is passed over without hanging', async () => {
    const readings = await readContent(written({ before: ['x'.repeat(3_000_000)] }));
    expect(readings.columns).toHaveLength(7);
  });

  it('5,000 columns are read', async () => {
    const header = ['Time', ...Array.from({ length: 5000 }, (_, at) => `P${at}`)].join(',');
    const rows = Array.from({ length: 20 }, (_, row) =>
      [
        `2026-09-01 00:${10 + row}`,
        ...Array.from({ length: 5000 }, (_, at) => (at + row * 0.5).toFixed(1)),
      ].join(','),
    );
    const readings = await readContent([header, ...rows].join('\n'));
    expect(readings.columns).toHaveLength(5000);
    expect(onlyReport(readings).values).toBe(100_000);
  });

  it('100,000 quotes, a million commas and nested repeats are refused, in little memory', async () => {
    const before = heapMegabytes();
    for (const text of [
      '"'.repeat(100_000),
      ','.repeat(1_000_000),
      `${'1,'.repeat(50_000)}\n`.repeat(4),
      `"${'a\n'.repeat(50_000)}`,
      '\0'.repeat(300_000),
      `${'-'.repeat(100_000)}\n`.repeat(3),
    ]) {
      await refusal(text);
    }
    expect(heapMegabytes() - before).toBeLessThan(300);
  });

  it('cells that make slow patterns slow are told as unreadable', async () => {
    const cells = [
      '1'.repeat(190),
      `${'1,'.repeat(90)}1`,
      `${' '.repeat(190)}x`,
      `(${'('.repeat(180)}`,
      `${'1 '.repeat(90)}°`,
      `${'a.'.repeat(90)}`,
      `${"1'".repeat(90)}x`,
    ];
    const rows = Array.from(
      { length: 300 },
      (_, row) =>
        `2026-09-${10 + Math.floor(row / 24)} ${String(row % 24).padStart(2, '0')}:00,"${cells[row % cells.length]}${row}",1.5`,
    );
    const readings = await readContent(['Time,Bad,Air', ...rows].join('\n'));
    expect(codesOf(readings)).toContain('value-unreadable');
  });

  const stampAt = (at: number): string =>
    new Date(Date.UTC(2026, 8, 1) + at * 60_000).toISOString().slice(0, 16);
  const repeated: readonly [string, () => string, number][] = [
    [
      'a remark between every two rows',
      () =>
        Array.from({ length: 20_000 }, (_, at) =>
          at % 2 ? `note ${at},door open` : `${stampAt(at)},1.5`,
        ).join('\n'),
      10_000,
    ],
    [
      'a header between every two rows',
      () => Array.from({ length: 20_000 }, (_, at) => (at % 2 ? 'Time,A' : `${stampAt(at)},1.5`)).join('\n'),
      10_000,
    ],
    [
      'an open quote in every row',
      () => Array.from({ length: 3000 }, (_, at) => `${stampAt(at)},"1.5`).join('\n'),
      3000,
    ],
  ];
  it.each(repeated)('%s takes work in proportion', async (_name, rows, readings) => {
    const content = `Time,A\n${rows()}\n`;
    const report = onlyReport(
      await withBoundedWork(content.length, () => readContent(content, { zone: 'UTC' })),
    );
    expect(report.values - report.valuesRejected).toBe(readings);
  });

  it('a preamble of 100,000 lines before a short table is passed over', async () => {
    const preamble = Array.from({ length: 100_000 }, (_, at) => `line ${at} of the preamble`).join('\n');
    const readings = await readContent(`${preamble}\nTime,A\n2026-09-01 00:00,1.5\n2026-09-01 00:05,2.5\n`, {
      zone: 'UTC',
    });
    expect(onlyReport(readings)).toMatchObject({ rows: 2, rowsRejected: 0 });
    expect(onlyReport(readings).issues[0]).toMatchObject({ code: 'preamble', count: 100_000 });
  });

  it('three thousand tables in one file take no more room than their rows', async () => {
    const tables = Array.from(
      { length: 3000 },
      (_, at) => `Time,A${at}\n${stampAt(at)},1.5\n${stampAt(at + 1)},2.5\n`,
    ).join('');
    const before = process.memoryUsage().arrayBuffers;
    const report = onlyReport(await readContent(tables, { zone: 'UTC' }));
    expect(report.rows).toBeGreaterThan(3000);
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(100e6);
  });
});
