import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { runCli } from '../cli/support/run-cli.ts';
import { scratchFolder } from '../cli/support/scratch.ts';

/** Electric power of real refrigerators (tracebase, ODbL): tests/analyses/data/SOURCES.md. */
const data = (name: string) => fileURLToPath(new URL(`../analyses/data/${name}`, import.meta.url));
const truth = JSON.parse(readFileSync(data('tracebase_starts.json'), 'utf8')) as {
  readonly [device: string]: { readonly [day: string]: { readonly starts: number } };
};
const scratch = scratchFolder();
const site = scratch.write(
  'site.yaml',
  'site: Household\ntimeZone: Europe/Berlin\nracks:\n  - id: R\n    suctionGroups:\n      - id: R1\n        compressors: [power_W]\ncircuits: []\n',
);

interface Row {
  readonly day: string;
  readonly starts: string;
  readonly startsSeen: string;
  readonly note: string;
}

/** The whole way: export, import, signals, table. Every `every`-th row of the export is kept. */
async function compressorDays(device: string, every: number): Promise<Row[]> {
  const [header, ...rows] = readFileSync(data(`tracebase_${device}_1min.csv`), 'utf8')
    .trim()
    .split('\n');
  const kept = rows.filter((_, i) => i % every === 0);
  const file = scratch.write(`${device}-${every}.csv`, `${[header, ...kept].join('\n')}\n`);
  const folder = `${scratch.path}/${device}-${every}`;
  const { code, err } = await runCli(['audit', file, '--site', site, '--tables', folder]);
  expect({ code, err }).toMatchObject({ code: 0 });
  const csv = readFileSync(`${folder}/compressors.csv`, 'utf8').trim();
  return Papa.parse<Row>(csv, { header: true }).data;
}

describe.each(Object.keys(truth))('compressors.csv of the real refrigerator %s', (device) => {
  test('counts the starts of every day exactly at 60 s', async () => {
    const rows = await compressorDays(device, 1);
    for (const { day, starts, note } of rows) {
      expect(note).toBe('');
      expect({ day, starts: Number(starts) }).toEqual({ day, starts: truth[device]![day]!.starts });
    }
    expect(rows).toHaveLength(Object.keys(truth[device]!).length);
  });

  test.each([5, 15])('read every %i minutes counts exactly, or says why it does not count', async (every) => {
    for (const { day, starts, startsSeen, note } of await compressorDays(device, every)) {
      if (starts === '') expect(note).toContain(`logged every ${every} min`);
      else expect({ day, starts: Number(starts) }).toEqual({ day, starts: truth[device]![day]!.starts });
      expect(Number(startsSeen)).toBeLessThanOrEqual(truth[device]![day]!.starts + 1);
    }
  });
});
