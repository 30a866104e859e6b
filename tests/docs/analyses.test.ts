import { existsSync, readdirSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { drawn, embedding, pictures } from '../reference/pictures/every-picture.ts';
import { analysisMetas } from '../reference/settings-page.ts';
import { read, root } from './documents.ts';

const namesIn = (folder: string): string[] => readdirSync(new URL(folder, root));
const metas = analysisMetas();
const pages = namesIn('docs/methods/')
  .filter((name) => name.endsWith('.md'))
  .map((name) => name.slice(0, -3));

describe('every analysis', () => {
  const ids = metas.map(({ id }) => id);

  it('is a folder with a line in the registry, and no other folder is there', () => {
    const folders = readdirSync(new URL('src/analyses/', root), { withFileTypes: true });
    expect(ids.toSorted()).toEqual(
      folders
        .filter((entry) => entry.isDirectory())
        .map(({ name }) => name)
        .sort(),
    );
  });

  it.each(ids)('%s has a page, a test, a picture and its settings in the reference', (id) => {
    expect(pages).toContain(id);
    expect(existsSync(new URL(`tests/analyses/${id}.test.ts`, root)), `tests/analyses/${id}.test.ts`).toBe(
      true,
    );
    expect(pictures.map((picture) => picture.id)).toContain(id);
    expect(read('docs/reference/settings.md')).toContain(`](../methods/${id}.md)`);
    expect(read('README.md')).toContain(`](docs/methods/${id}.md)`);
  });

  it.each(metas)('$id names its thresholds on its page with the values of the code', ({ id, settings }) => {
    const page = read(`docs/methods/${id}.md`);
    for (const [name, { value }] of Object.entries(settings)) {
      for (const [mention, told] of page.matchAll(new RegExp(`\`${name}\` \\(([\\d.,]+)`, 'g'))) {
        const stands = Number(told!.replace(/[.,]$/, ''));
        const meant = [value, value * 100, value / 60];
        expect(
          meant.some((one) => Math.abs(one - stands) < 1e-9),
          `${mention} against ${value}`,
        ).toBe(true);
      }
    }
  });
});

describe('every page of method', () => {
  it('has a picture, and every picture a page', () => {
    expect(pictures.map(({ id }) => id).toSorted()).toEqual(pages.toSorted());
    expect(namesIn('docs/methods/pictures/').toSorted()).toEqual(pages.map((id) => `${id}.svg`).toSorted());
  });

  it.each(pictures)('$id shows its picture with the words for those who cannot see it', (picture) => {
    expect(read(`docs/methods/${picture.id}.md`)).toContain(embedding(picture));
  });
});

describe('every picture', () => {
  test.each(pictures)('$id is small, light and needs nothing else', ({ id }) => {
    const svg = read(`docs/methods/pictures/${id}.svg`);
    expect(svg.length).toBeGreaterThan(3000);
    expect(svg.length).toBeLessThan(40_000);
    expect(svg.replace('http://www.w3.org/2000/svg', '')).not.toMatch(
      /https?:|url\(|@import|<script|<image|href/,
    );
    expect(svg).not.toMatch(/NaN|undefined|prefers-color-scheme/);
  });

  test.each(pictures)('$id is what `npm run docs` draws', (picture) => {
    expect(drawn(picture)).toBe(read(`docs/methods/pictures/${picture.id}.svg`));
  });
});
