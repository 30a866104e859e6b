import { execFile } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { describe, expect, test } from 'vitest';
import { scratchFolder } from './support/scratch.ts';
import { smallExport } from './support/small-export.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const fromSource = ['--import', 'tsx', join(root, 'src/cli/main.ts')];
const asBuilt = [join(root, 'dist/rimelog.js')];
const folder = scratchFolder();
const store = folder.write('store.csv', smallExport(20));

const run = async (command: readonly string[], ...args: string[]): Promise<string> =>
  (await promisify(execFile)(process.execPath, [...command, ...args])).stdout;

describe('the command as it is built (npm run build)', () => {
  test.each(['check --json', 'check', 'norms'])(
    '%s says what the source says, sign by sign',
    async (call) => {
      const [name, ...flags] = call.split(' ');
      const built = await run(asBuilt, name!, store, ...flags);
      expect(built).toBe(await run(fromSource, name!, store, ...flags));
    },
  );

  test('its tables of the month are those of the source', async () => {
    const tables = async (command: readonly string[], name: string) => {
      const path = join(folder.path, name);
      await run(command, 'audit', store, '--tables', path);
      return Object.fromEntries(
        readdirSync(path).map((file) => [file, readFileSync(join(path, file), 'utf8')]),
      );
    };
    const built = await tables(asBuilt, 'built');
    expect(Object.keys(built)).toContain('norms.csv');
    expect(built).toEqual(await tables(fromSource, 'source'));
  });

  test('holds no letter that would double what its source takes in memory', () => {
    const files = readdirSync(join(root, 'dist'), { recursive: true, encoding: 'utf8' }).filter(
      (name) => name.endsWith('.js') && !name.startsWith('web'),
    );
    expect(files.length).toBeGreaterThan(20);
    for (const file of files) {
      expect(/[^\0-\x7f]/.exec(readFileSync(join(root, 'dist', file), 'utf8')), file).toBeNull();
    }
  });
});
