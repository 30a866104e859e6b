import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { parseSiteFile } from '../../src/importing/site-file/site-file.ts';
import { documents, read } from './documents.ts';

interface Example {
  readonly page: string;
  readonly language: string;
  readonly code: string;
}

const examples: readonly Example[] = documents.flatMap((page) =>
  [...read(page).matchAll(/^```(\w+)\n([\s\S]*?)^```$/gm)].map(([, language, code]) => ({
    page,
    language: language!,
    code: code!,
  })),
);
const of = (language: string): readonly Example[] => examples.filter((one) => one.language === language);

describe('every example on a page', () => {
  test('is in a language that these tests know', () => {
    expect([...new Set(examples.map(({ language }) => language))].sort()).toEqual([
      'json',
      'sh',
      'text',
      'yaml',
    ]);
  });

  test.each(of('json'))('of JSON on $page is JSON', ({ code }) => {
    expect(() => JSON.parse(code)).not.toThrow();
  });

  test.each(of('yaml'))(
    'of YAML on $page is YAML, and a site file where it is a whole one',
    ({ page, code }) => {
      const value = parse(code) as { readonly [key: string]: unknown };
      expect(Object.keys(value).length).toBeGreaterThan(0);
      if ('circuits' in value || 'racks' in value) expect(parseSiteFile(code, page).circuits).toBeDefined();
    },
  );
});
