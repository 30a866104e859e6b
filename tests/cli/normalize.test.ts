import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { runCli } from './support/run-cli.ts';
import { scratchFolder } from './support/scratch.ts';
import { smallExport } from './support/small-export.ts';

const folder = scratchFolder();
const store = folder.write('store.csv', smallExport(1));

describe('rimelog normalize', () => {
  test('writes one tidy row a reading, times in UTC, and the account on standard error', async () => {
    const { code, out, err } = await runCli(['normalize', store, '--time-zone', 'America/Denver']);
    const rows = out.trimEnd().split('\n');
    expect(code).toBe(0);
    expect(rows[0]).toBe('time,point,value,unit');
    expect(rows[1]).toMatch(/^2026-09-01T06:00:00Z,M01 air A.*,36(\.0)?,\[degF\]$/);
    expect(rows).toHaveLength(1 + 6 * 288);
    expect(err).toContain('store.csv: 288 rows');
    expect(err).toContain('America/Denver (from --time-zone)');
  });

  test('writes the account as JSON with --report, in the shape of the findings document', async () => {
    const report = join(folder.path, 'import.json');
    const { code, err } = await runCli(['normalize', store, '--report', report]);
    expect(code).toBe(0);
    expect(err).toBe('');
    const [file] = JSON.parse(readFileSync(report, 'utf8')).files;
    expect(file).toMatchObject({
      name: 'store.csv',
      rows: 288,
      rowsRejected: 0,
      values: 1728,
      valuesRejected: 0,
    });
  });
});

describe('units of the site file', () => {
  const bare = 'Time,M01 air A,M02 air A (°C),S1 suction\n';
  const rows = [0, 5, 10, 15].map(
    (minute) => `2026-09-12 00:${String(minute).padStart(2, '0')},34.${minute},1.5,45`,
  );
  const mixed = folder.write('mixed.csv', `${bare}${rows.join('\n')}\n`);
  const unitsWith = async (...more: string[]): Promise<string[]> => {
    const { out } = await runCli(['normalize', mixed, '--time-zone', 'UTC', ...more]);
    return out
      .split('\n')
      .slice(1, 4)
      .map((row) => row.split(',')[3]!);
  };

  test('stand on the columns that say none, and on no other', async () => {
    const site = folder.write('units.yaml', 'site: Larkspur\ntimeZone: UTC\nunits: { temperature: degF }\n');
    expect(await unitsWith('--site', site)).toEqual(['[degF]', 'Cel', '[psi]']);
    expect(await unitsWith('--temperature-unit', 'degC', '--site', site)).toEqual(['Cel', 'Cel', '']);
    expect(await unitsWith('--pressure-unit', 'barg')).toEqual(['[degF]', 'Cel', 'bar']);
  });
});

describe('rimelog draft-site', () => {
  test('writes a site file that check accepts', async () => {
    const draft = join(folder.path, 'site.yaml');
    expect((await runCli(['draft-site', store, '-o', draft])).code).toBe(0);
    const { code, out } = await runCli(['check', store, '--site', draft, '--json']);
    expect(code).toBe(0);
    expect(
      JSON.parse(out)
        .circuits.map(({ id }: { id: string }) => id)
        .sort(),
    ).toEqual(['M01', 'M02']);
  });

  test('does not replace corrections that somebody made, unless told', async () => {
    const draft = join(folder.path, 'corrected.yaml');
    writeFileSync(draft, 'site: Corrected\n');
    const { code, err } = await runCli(['draft-site', store, '-o', draft]);
    expect(code).toBe(2);
    expect(err).toContain('--force');
    expect(readFileSync(draft, 'utf8')).toBe('site: Corrected\n');
    expect((await runCli(['draft-site', store, '-o', draft, '--force'])).code).toBe(0);
    expect(readFileSync(draft, 'utf8')).toContain('circuits:');
  });
});
