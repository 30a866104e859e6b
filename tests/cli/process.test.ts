import { execFile, spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { describe, expect, test } from 'vitest';
import { scratchFolder } from './support/scratch.ts';
import { smallExport } from './support/small-export.ts';

const main = fileURLToPath(new URL('../../src/cli/main.ts', import.meta.url));
const command = ['--import', 'tsx', main];
const folder = scratchFolder();
const store = folder.write('store.csv', smallExport());

describe('the command as a process', () => {
  test('ends quietly with 0 when its reader has seen enough', async () => {
    const long = folder.write('long.csv', smallExport(20));
    const child = spawn(process.execPath, [...command, 'normalize', long], {
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let talk = '';
    child.stderr.on('data', (text) => {
      talk += text;
    });
    await once(child.stdout, 'data');
    child.stdout.destroy();
    const [code] = await once(child, 'close');
    expect(code).toBe(0);
    expect(talk).not.toMatch(/EPIPE|Error/);
  });

  test('tells the shell its status and writes refusals to standard error alone', async () => {
    const failed = promisify(execFile)(process.execPath, [...command, 'check', 'nowhere.csv']);
    await expect(failed).rejects.toMatchObject({ code: 2, stdout: '' });
    const { stdout, stderr } = await promisify(execFile)(process.execPath, [
      ...command,
      'check',
      store,
      '--json',
    ]);
    expect(JSON.parse(stdout)).toMatchObject({ format: 'rimelog-findings/1' });
    expect(stderr).toBe('');
  });

  test('gives the same bytes in another time zone and language of the machine when the zone is told', async () => {
    const call = [...command, 'check', store, '--json', '--time-zone', 'America/Denver'];
    const run = async (TZ: string, LANG: string) =>
      (await promisify(execFile)(process.execPath, call, { env: { ...process.env, TZ, LANG } })).stdout;
    expect(await run('Asia/Tokyo', 'ja_JP.UTF-8')).toBe(await run('America/New_York', 'C'));
  });

  test('serves the page until it is told to stop, and says where', async () => {
    const call = [...command, 'serve', '--port', '0', '--data', join(folder.path, 'data')];
    const child = spawn(process.execPath, call, { stdio: ['ignore', 'pipe', 'pipe'] });
    const closed = once(child, 'close');
    const [line] = await once(child.stdout, 'data');
    const address = /http:\/\/127\.0\.0\.1:\d+\//.exec(String(line))?.[0];
    expect(address).toBeDefined();
    expect((await fetch(`${address}health`)).status).toBe(200);
    child.kill('SIGTERM');
    expect((await closed)[0]).toBe(0);
  });
});
