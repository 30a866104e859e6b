import { existsSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { runCli } from '../cli/support/run-cli.ts';
import { readmeWithExample } from '../reference/readme-example.ts';
import { codeOf, documents, read, root } from './documents.ts';

/** What stands on the third line from a marker, as .ci/run takes it. */
function marked(marker: string): string {
  const lines = read('README.md').split('\n');
  const at = lines.indexOf(`<!-- ${marker} -->`);
  expect([lines[at + 1], lines[at + 3]]).toEqual(['```sh', '```']);
  return lines[at + 2]!;
}

describe('the README', () => {
  test('holds two commands that need nothing but Node and the registry', () => {
    expect(marked('test-command')).toBe('npm ci && npm test');
    expect(marked('run-command')).toMatch(
      /^npm ci && npm run build && npx rimelog check sample-logs\/\S+ --html \S+$/,
    );
  });

  test('is where CI reads the command that it runs', () => {
    expect(read('.ci/run')).toContain("sed -n '/^<!-- test-command -->$/,/^```$/p' README.md | sed -n '3p'");
  });

  test('shows what its first command prints: run `npm run docs` when this fails', async () => {
    expect(read('README.md')).toBe(await readmeWithExample());
  });

  test('fits its first screens', () => {
    expect(read('README.md').split('\n').length).toBeLessThanOrEqual(81);
  });
});

describe('every command that a page names', () => {
  const { scripts } = JSON.parse(read('package.json')) as { scripts: { [name: string]: string } };
  const texts = documents.map((page) => ({ page, text: read(page) }));

  test('by npm run stands in package.json', () => {
    const named = texts.flatMap(({ page, text }) =>
      [...text.matchAll(/npm run ([\w:-]+)/g)].map(([, name]) => ({ page, name: name! })),
    );
    expect(named.length).toBeGreaterThan(10);
    expect(named.filter(({ name }) => scripts[name] === undefined)).toEqual([]);
  });

  test('of rimelog is one, with options that it has', async () => {
    const { out } = await runCli(['--help'], { columns: 100 });
    const commands = [...out.matchAll(/^ {2}([a-z-]+) \[options\]/gm)].map(([, name]) => name!);
    const helps = new Map<string, string>();
    for (const name of commands) helps.set(name, (await runCli([name, '--help'], { columns: 100 })).out);
    const calls = texts.flatMap(({ page, text }) =>
      codeOf(text).flatMap((code) => {
        const call = /^(?:\$ |npx )?rimelog ([a-z][a-z-]*)([^|#>]*)/.exec(code.trim());
        return call === null
          ? []
          : [{ page, name: call[1]!, options: call[2]!.match(/--[a-z][a-z-]*/g) ?? [] }];
      }),
    );
    expect(calls.length).toBeGreaterThan(30);
    const wrong = calls.filter(
      ({ name, options }) =>
        name !== 'help' && !(helps.has(name) && options.every((option) => helps.get(name)!.includes(option))),
    );
    expect(wrong).toEqual([]);
  });

  test('by file is there', () => {
    const paths = texts.flatMap(({ page, text }) =>
      [...text.matchAll(/`((?:src|tests|server|web|docs|sample-logs)\/[\w./-]+)`/g)].map(([, path]) => ({
        page,
        path: path!,
      })),
    );
    expect(paths.length).toBeGreaterThan(20);
    expect(paths.filter(({ path }) => !existsSync(new URL(path, root)))).toEqual([]);
  });
});
