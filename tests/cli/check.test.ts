import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { runCli } from './support/run-cli.ts';
import { scratchFolder } from './support/scratch.ts';
import { smallExport } from './support/small-export.ts';

const folder = scratchFolder();
const store = folder.write('store.csv', smallExport());
const iced = new URL('../../sample-logs/iced-end/export.csv', import.meta.url).pathname;
const icedSite = new URL('../../sample-logs/iced-end/site.yaml', import.meta.url).pathname;

describe('rimelog check', () => {
  test('prints the list on standard output and nothing on standard error when that is no terminal', async () => {
    const { code, out, err } = await runCli(['check', store]);
    expect(code).toBe(0);
    expect(out).toContain('What was read');
    expect(err).toBe('');
  });

  test('prints one JSON document and nothing else with --json', async () => {
    const { code, out } = await runCli(['check', store, '--json']);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ format: 'rimelog-findings/1' });
  });

  test('shows progress on standard error only where that is a terminal, and wipes it', async () => {
    const { out, err } = await runCli(['check', store, '--json'], { errIsTerminal: true });
    expect(err).toMatch(/reading.*judging/s);
    expect(err.endsWith('\r\u001b[K')).toBe(true);
    expect(() => JSON.parse(out)).not.toThrow();
  });

  test('colours only a terminal, and neither with --no-color nor with NO_COLOR', async () => {
    const escapes = async (args: string[], environment: Record<string, string>, outIsTerminal: boolean) =>
      (await runCli(['check', store, ...args], { outIsTerminal, environment })).out.includes('\u001b[');
    expect(await escapes([], {}, true)).toBe(true);
    expect(await escapes([], {}, false)).toBe(false);
    expect(await escapes(['--no-color'], {}, true)).toBe(false);
    expect(await escapes([], { NO_COLOR: '1' }, true)).toBe(false);
  });

  test('writes the page and says where it is', async () => {
    const page = join(folder.path, 'report.html');
    const { code, out } = await runCli(['check', store, '--html', page]);
    expect(code).toBe(0);
    expect(out).toContain(`The page with the plots: ${page}`);
    expect(readFileSync(page, 'utf8')).toMatch(/^<!doctype html>/);
  });

  test('ends with 1 only when a finding is at least as severe as --exit-on', async () => {
    const call = ['check', iced, '--site', icedSite, '--json'];
    expect((await runCli([...call, '--exit-on', 'watch'])).code).toBe(1);
    expect((await runCli(call)).code).toBe(0);
    expect((await runCli(['check', store, '--json', '--exit-on', 'watch'])).code).toBe(0);
  });

  test('uses the site file that lies in the folder of exports, and says so', async () => {
    const place = join(folder.path, 'september');
    mkdirSync(place);
    writeFileSync(join(place, 'store.csv'), smallExport());
    writeFileSync(join(place, 'site.yaml'), 'site: Larkspur Street Market\ntimeZone: America/Denver\n');
    const { out, err } = await runCli(['check', place, '--json']);
    expect(err).toBe(`Using the site file ${join(place, 'site.yaml')}\n`);
    expect(JSON.parse(out)).toMatchObject({ site: 'Larkspur Street Market', timeZone: 'America/Denver' });
  });

  test('never writes the page over an export', async () => {
    const copy = folder.write('copy.csv', smallExport());
    const { code, err } = await runCli(['check', copy, '--html', copy]);
    expect(code).toBe(2);
    expect(err).toContain('would be lost');
    expect(readFileSync(copy, 'utf8')).toBe(smallExport());
  });

  test('refuses to write the page into a folder that is not there, in one sentence', async () => {
    const page = join(folder.path, 'nowhere', 'report.html');
    const { code, err } = await runCli(['check', store, '--html', page]);
    expect(code).toBe(2);
    expect(err).toContain(`${page}: there is no such file or folder`);
    expect(existsSync(page)).toBe(false);
  });
});
