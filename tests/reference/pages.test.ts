import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { causesPage } from './causes-page.ts';
import { analysisMetas, settingsPage } from './settings-page.ts';
import { tablesPage } from './tables-page.ts';

const root = new URL('../../', import.meta.url);
const read = (path: string): string => readFileSync(new URL(path, root), 'utf8');

describe('reference pages', () => {
  it('are what the code says: run `npm run docs` when this fails', () => {
    expect(read('docs/reference/settings.md')).toBe(settingsPage());
    expect(read('docs/reference/causes.md')).toBe(causesPage());
    expect(read('docs/reference/tables.md')).toBe(tablesPage());
  });
});

describe('every analysis', () => {
  const metas = analysisMetas();

  it.each(metas)('$id gives each setting a unit, a meaning and a source', ({ settings }) => {
    for (const [name, setting] of Object.entries(settings)) {
      expect(Number.isFinite(setting.value), name).toBe(true);
      expect(setting.unit, name).not.toBe('');
      expect(setting.meaning.length, name).toBeGreaterThan(15);
      expect(setting.source.length, name).toBeGreaterThan(5);
    }
  });
});
