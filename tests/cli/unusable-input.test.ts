import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { runCli } from './support/run-cli.ts';
import { scratchFolder } from './support/scratch.ts';
import { smallExport } from './support/small-export.ts';

const folder = scratchFolder();
const png = Uint8Array.from([137, 80, 78, 71, 13, 10, 26, 10, 0, 0, 0, 13, 73, 72, 68, 82, 0, 0, 0, 1]);
const noise = Uint8Array.from({ length: 4096 }, (_, i) => (i * 197 + (i >> 3) * 31) % 256);
const good = folder.write('good.csv', smallExport());
const emptyFolder = join(folder.path, 'no-exports');
mkdirSync(emptyFolder);
folder.write('no-exports/notes.txt.bak', 'nothing');

const cases: readonly [string, string[], RegExp][] = [
  ['an empty file', [folder.write('empty.csv', '')], /empty\.csv.*empty/],
  ['an image renamed .csv', [folder.write('photo.csv', png)], /photo\.csv.*PNG image/],
  ['a header without a row', [folder.write('header.csv', 'Time,M01 air A,M01 air B\n')], /header\.csv/],
  [
    'an error page saved as CSV',
    [folder.write('page.csv', '<!DOCTYPE html>\n<html><body><h1>502 Bad Gateway</h1></body></html>\n')],
    /page\.csv.*(web page|HTML)/,
  ],
  ['bytes that are no text', [folder.write('noise.csv', noise)], /noise\.csv/],
  [
    'prose',
    [folder.write('letter.csv', 'Dear colleague,\nplease find the log attached.\nRegards\n')],
    /letter\.csv/,
  ],
  ['a file that is not there', [join(folder.path, 'nowhere.csv')], /nowhere\.csv/],
  ['a folder without an export', [emptyFolder], /no-exports/],
  ['a damaged archive', [folder.write('store.zip', 'PK\u0003\u0004 and then nothing')], /store\.zip/],
  [
    'a damaged gzip',
    [folder.write('store.csv.gz', Uint8Array.from([31, 139, 8, 0, 1, 2, 3, 4]))],
    /store\.csv/,
  ],
  [
    'a site file with a typo',
    [good, '--site', folder.write('typo.yaml', 'site: Larkspur\ncircits: []\n')],
    /typo\.yaml.*circits.*circuits/,
  ],
  [
    'a site file that is no YAML',
    [good, '--site', folder.write('broken.yaml', 'site: [unclosed\n')],
    /broken\.yaml/,
  ],
  [
    'a site file that is not there',
    [good, '--site', join(folder.path, 'gone.yaml')],
    /gone\.yaml does not exist/,
  ],
  ['a span outside the export', [good, '--from', '2031-01-01'], /2031|--from/],
  ['a time that is none', [good, '--from', 'yesterday'], /yesterday/],
];

describe('input that cannot be used', () => {
  test.each(cases)('%s ends in one sentence and status 2', async (_, args, message) => {
    const { code, out, err } = await runCli(['check', ...args]);
    expect(err).toMatch(message);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err.trimEnd().split('\n')).toHaveLength(1);
    expect(err).toMatch(/^rimelog: .{20,400}[.!?)]\n$/);
    expect(err).not.toMatch(/^\s+at |Error:|undefined|NaN|\[object/m);
  });
});
