import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { runCli } from './support/run-cli.ts';

const importing = fileURLToPath(new URL('../../src/importing', import.meta.url));

/** `--serviced` is the service time that `verify` asks for. */
const flagsOfOtherCommands = ['--serviced'];

test('every flag that an import choice or remedy names is one that check understands', async () => {
  const sources = readdirSync(importing, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => readFileSync(`${importing}/${name}`, 'utf8'));
  const named = new Set(sources.flatMap((text) => text.match(/--[a-z]+(?:-[a-z]+)*/g) ?? []));
  const { out } = await runCli(['check', '--help']);
  expect(named.size).toBeGreaterThanOrEqual(6);
  const unknown = [...named].filter((flag) => !out.includes(`${flag} `));
  expect(unknown.filter((flag) => !flagsOfOtherCommands.includes(flag))).toEqual([]);
});
