import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { runCli } from './support/run-cli.ts';

const page = readFileSync(new URL('../../docs/reference/command-line.md', import.meta.url), 'utf8');

/** Blocks of the page that begin with `$ rimelog … --help`, each with what should follow. */
const blocks = [...page.matchAll(/```text\n\$ rimelog (.*--help)\n([\s\S]*?)```/g)].map(([, call, text]) => ({
  call: call!,
  text: text!,
}));

test('the page shows the help of every command', async () => {
  const { out } = await runCli(['--help']);
  const commands = [...out.matchAll(/^ {2}(\S+) \[options\]/gm)].map(([, name]) => `${name} --help`);
  expect(blocks.map(({ call }) => call)).toEqual(['--help', ...commands]);
});

test.each(blocks)('the page shows what rimelog $call prints', async ({ call, text }) => {
  const { out } = await runCli(call.split(' '), { columns: 100 });
  expect(text.trim()).toBe(out.trim());
});
