import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { runCli } from '../cli/support/run-cli.ts';

const readme = new URL('../../README.md', import.meta.url);
const begin = '<!-- example-output -->\n```text\n';
const end = '```\n<!-- /example-output -->';

/** The list that the README's first command prints, down to what its first finding says to check. */
export async function exampleOutput(): Promise<string> {
  const sample = fileURLToPath(new URL('../../sample-logs/iced-end', import.meta.url));
  const { out } = await runCli(['check', sample]);
  const lines = out.split('\n');
  const after = lines.findIndex((line) => line.startsWith('    check '));
  return `${lines.slice(0, after).join('\n')}\n…\n`;
}

/** README.md with its example as the program prints it now. Throws where the markers are gone. */
export async function readmeWithExample(): Promise<string> {
  const text = readFileSync(readme, 'utf8');
  const from = text.indexOf(begin);
  const to = text.indexOf(end, from);
  if (from < 0 || to < 0) throw new Error('README.md has lost the markers around its example output.');
  return text.slice(0, from + begin.length) + (await exampleOutput()) + text.slice(to);
}
