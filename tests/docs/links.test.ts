import { existsSync } from 'node:fs';
import { expect, test } from 'vitest';
import { anchorsOf, documents, prose, read, root } from './documents.ts';

function linksOf(page: string): string[] {
  return [...prose(read(page)).matchAll(/\]\(([^)\s]+)\)/g)]
    .map(([, target]) => target!)
    .filter((target) => !/^[a-z]+:/.test(target));
}

test('there are pages to look at', () => {
  expect(documents.length).toBeGreaterThan(40);
});

test.each(documents)('%s: every link leads somewhere', (page) => {
  for (const link of linksOf(page)) {
    const [path, anchor] = link.split('#') as [string, string | undefined];
    const target = new URL(path === '' ? page : path, new URL(page, root));
    const file = path === '' ? new URL(page, root) : target;
    expect(existsSync(file), `${page} → ${link}`).toBe(true);
    if (anchor !== undefined && file.pathname.endsWith('.md')) {
      const from = file.href.slice(root.href.length);
      expect(anchorsOf(read(from)), `${page} → ${link}`).toContain(anchor);
    }
  }
});

test('the index names every page of the documentation', () => {
  const index = new Set(linksOf('docs/README.md').map((link) => `docs/${link}`));
  const pages = documents.filter((page) => /^docs\/\w/.test(page) && page !== 'docs/README.md');
  expect(pages.filter((page) => !index.has(page))).toEqual([]);
});

test('every data file of others stands in NOTICE.md by its SOURCES file', () => {
  const sources = documents.filter((page) => page.endsWith('SOURCES.md'));
  expect(sources.length).toBeGreaterThan(3);
  expect(
    linksOf('NOTICE.md')
      .filter((link) => link.endsWith('SOURCES.md'))
      .toSorted(),
  ).toEqual(sources.toSorted());
});
