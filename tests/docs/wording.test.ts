import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { root } from './documents.ts';

/** Put together here, so that this file does not hold them. */
const forbidden = [
  ['trans', 'cript'],
  ['you', 'tube'],
  ['/wo', 'rk/'],
  ['..', '/shared'],
  ['TO', 'DO:'],
].map((parts) => parts.join(''));

const texts = /\.(ts|md|json|css|html|yaml|svg|mjs)$/;
const folders = ['src', 'server', 'web', 'docs', 'tests', 'sample-logs', '.ci'];

function files(): string[] {
  const inside = folders.flatMap((folder) =>
    readdirSync(fileURLToPath(new URL(`${folder}/`, root)), { recursive: true, encoding: 'utf8' }).map(
      (name) => `${folder}/${name}`,
    ),
  );
  return [...readdirSync(root), ...inside].filter(
    (name) => texts.test(name) && !name.includes('node_modules'),
  );
}

test('no file names a place of one machine, nor what is not ours to cite', () => {
  const all = files();
  expect(all.length).toBeGreaterThan(500);
  const found = all.flatMap((name) => {
    const text = readFileSync(new URL(name, root), 'utf8').toLowerCase();
    return forbidden.filter((word) => text.includes(word.toLowerCase())).map((word) => `${name}: ${word}`);
  });
  expect(found).toEqual([]);
});
