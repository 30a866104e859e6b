import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { runCli } from './support/run-cli.ts';
import { scratchFolder } from './support/scratch.ts';
import { smallExport } from './support/small-export.ts';

const sample = fileURLToPath(new URL('../../sample-logs/iced-end', import.meta.url));
const scratch = scratchFolder();
const small = scratch.write('small.csv', smallExport());
const other = scratch.write(
  'other.csv',
  smallExport().replaceAll('M0', 'P0').replace('S1 suction', 'N7 suction'),
);

describe('rimelog audit', () => {
  test('writes every table and the report, and a summary on standard output', async () => {
    const folder = `${scratch.path}/tables`;
    const page = `${scratch.path}/month.html`;
    const { code, out } = await runCli([
      'audit',
      sample,
      '--month',
      '2026-09',
      '--tables',
      folder,
      '--html',
      page,
    ]);
    expect(code).toBe(0);
    expect(out).toContain('Month 2026-09');
    expect(out).toContain('What the alarms would have said');
    const names = readdirSync(folder);
    for (const name of ['probes', 'circuits', 'defrosts', 'compressors'])
      expect(names).toContain(`${name}.csv`);
    for (const name of names) {
      const { data, errors } = Papa.parse<string[]>(readFileSync(`${folder}/${name}`, 'utf8').trim());
      expect(errors.filter(({ type }) => type !== 'Delimiter')).toEqual([]);
      expect(new Set(data.map((row) => row.length)).size).toBe(1);
    }
    expect(readFileSync(page, 'utf8')).toContain('The month in refrigeration');
  });

  test('gives the same bytes twice', async () => {
    const write = async (name: string) => {
      const page = `${scratch.path}/${name}.html`;
      const { out } = await runCli(['audit', sample, '--html', page]);
      return { page: readFileSync(page, 'utf8'), out: out.replace(page, '') };
    };
    expect(await write('one')).toEqual(await write('two'));
  });
});

describe('rimelog verify', () => {
  const verify = (...args: string[]) => runCli(['verify', sample, '--circuit', 'M01', ...args]);

  test('answers with one of four verdicts, every measure with its interval', async () => {
    const { code, out } = await verify('--serviced', '2026-09-22T10:00', '--json');
    expect(code).toBe(0);
    const document = JSON.parse(out);
    expect(document).toMatchObject({ format: 'rimelog-verify/1', circuit: 'M01', verdict: 'unchanged' });
    for (const { before, after, difference, low, high } of document.measures) {
      expect(after - before).toBeCloseTo(difference, 6);
      expect(low).toBeLessThanOrEqual(difference);
      expect(high).toBeGreaterThanOrEqual(difference);
    }
  });

  test('says it in words without --json', async () => {
    const { out } = await verify('--serviced', '2026-09-30T20:00');
    expect(out).toContain('Too early to say');
    expect(out).toContain('Everything back on');
  });
});

test('rimelog compare says the same to a program', async () => {
  const { out } = await runCli(['compare', sample, '--circuit', 'M02', '--json']);
  const sisters = JSON.parse(out);
  expect(sisters).toMatchObject({ format: 'rimelog-sisters/1', circuit: 'M02' });
  for (const { own, sisters: others, outside } of sisters.figures) {
    const values = others.map(({ value }: { value: number }) => value);
    if (outside) expect(own < Math.min(...values) || own > Math.max(...values)).toBe(true);
  }
  const spans = scratch.write('later.csv', smallExport(4));
  const { out: both } = await runCli(['compare', small, '--against', spans, '--json', '--time-zone', 'UTC']);
  const comparison = JSON.parse(both);
  expect(comparison).toMatchObject({ format: 'rimelog-compare/1' });
  expect(comparison.remarks.join(' ')).toContain('The two spans overlap');
  for (const { figures } of comparison.places)
    for (const { before, after, low, high } of figures) {
      expect(low).toBeLessThanOrEqual(after - before + 0.5);
      expect(high).toBeGreaterThanOrEqual(low);
    }
});

describe('rimelog norms, visit and compare', () => {
  test('norms answers in one line whether a reading is normal', async () => {
    const { code, out } = await runCli(['norms', sample, '--point', 'M01 air A (°F)', '--reading', '41']);
    expect(code).toBe(0);
    expect(out.trim().split('\n')).toHaveLength(1);
    expect(out).toMatch(
      /41\.0 °F at M01 air A \(°F\) is unusual here, above its range: .* from \d+ quiet days/,
    );
  });

  test('visit is a sheet with the one stop that is worth it', async () => {
    const { code, out } = await runCli(['visit', sample]);
    expect(code).toBe(0);
    expect(out).toContain('M01 Produce line-up');
    expect(out).toContain('Take care');
  });

  test('compare sets a circuit beside its sisters', async () => {
    const { code, out } = await runCli(['compare', sample, '--circuit', 'M02']);
    expect(code).toBe(0);
    expect(out.replace(/\s+/g, ' ')).toContain('Sisters, over the last seven days: M01, M03');
  });
});

test.each<[string, string[], RegExp]>([
  [
    'a month that the export does not hold',
    ['audit', small, '--month', '2026-01'],
    /holds nothing of 2026-01; it holds 2026-0/,
  ],
  ['a month that is none', ['audit', small, '--month', '2026-13'], /A month like 2026-09/],
  [
    'a circuit that is not there',
    ['verify', small, '--circuit', 'M77', '--serviced', '2026-09-02T00:00'],
    /no circuit M77; the circuits are M01/,
  ],
  [
    'a service outside the export',
    ['verify', small, '--circuit', 'M01', '--serviced', '2026-10-02'],
    /lies outside the export/,
  ],
  [
    'a service time that is none',
    ['verify', small, '--circuit', 'M01', '--serviced', 'Tuesday'],
    /give a date or time like/,
  ],
  ['verify without a circuit', ['verify', small, '--serviced', '2026-09-02'], /--circuit/],
  ['a point without a norm', ['norms', small, '--point', 'nowhere'], /too few quiet days|Nothing is known/],
  [
    'a reading that is no number',
    ['norms', small, '--point', 'x', '--reading', 'warm'],
    /A number is expected/,
  ],
  ['nothing to compare with', ['compare', small], /--against another export, or --circuit/],
  [
    'an export with other circuits',
    ['compare', small, '--against', other],
    /no circuit and no suction group in common/,
  ],
  ['a circuit with a single sister', ['compare', small, '--circuit', 'M01'], /fewer than two sisters/],
])('%s ends in one sentence and status 2', async (_, args, message) => {
  const { code, out, err } = await runCli([...args, '--time-zone', 'America/Denver']);
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err).toMatch(message);
  expect(err).not.toMatch(/\n\s+at /);
});
