import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { readSources, withoutComments } from './layers/source-imports.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const clock = /\bperformance\s*\.\s*now\b|\bDate\s*\.\s*now\b|\bhrtime\b/;

test('no test measures time: that is what npm run bench is for', () => {
  const timed = readSources(root, ['tests'])
    .filter(({ path, text }) => path.endsWith('.test.ts') && clock.test(withoutComments(text)))
    .map(({ path }) => path);
  // This one holds clocks as text, for the rule that the core has none.
  expect(timed).toEqual(['tests/layers.test.ts']);
});
