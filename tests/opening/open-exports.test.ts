import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ImportRefusal } from '../../src/importing/readings.ts';
import { openExports } from '../../src/opening/open-exports.ts';
import { written } from '../importing/damaged/plain-log.ts';
import { normalized, normalizedContent, readSources } from '../importing/support.ts';
import { zipOf } from './zip-of.ts';

let folder: string;
const log = written();
const path = (name: string): string => join(folder, name);

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'rimelog-opening-'));
  await mkdir(path('store/rack-a'), { recursive: true });
  await mkdir(path('empty'));
  await writeFile(path('plain.csv'), log);
  await writeFile(path('plain.csv.gz'), gzipSync(log));
  await writeFile(path('broken.csv.gz'), gzipSync(log).subarray(0, 200));
  await writeFile(path('packed.csv'), gzipSync(log));
  await writeFile(path('unpacked.csv.gz'), log);
  await writeFile(path('not.gz'), 'plain text');
  await writeFile(path('store/rack-a/week-1.csv'), log);
  await writeFile(path('store/read me.md'), 'Exports');
  await writeFile(path('store/.hidden.csv'), 'x');
  await writeFile(
    path('month.zip'),
    zipOf([
      { name: 'rack-a/week-1.csv', content: log },
      { name: '__MACOSX/rack-a/._week-1.csv', content: 'x' },
      { name: 'notes.pdf', content: '%PDF' },
    ]),
  );
  await writeFile(path('workbooks.zip'), zipOf([{ name: 'week 1.xlsx', content: log }]));
  await writeFile(path('broken.zip'), zipOf([{ name: 'a.csv', content: log }]).subarray(0, 300));
  await writeFile(path('bomb.zip'), zipOf([{ name: 'a.csv', content: log, claimedSize: 60 * 1024 ** 3 }]));
  await writeFile(path('slim-bomb.zip'), zipOf([{ name: 'a.csv', content: '0'.repeat(20_000_000) }]));
  await writeFile(path('bomb.csv.gz'), gzipSync('0,1,2\n'.repeat(5_000_000)));
  await writeFile(
    path('many-small.zip'),
    zipOf(Array.from({ length: 8 }, (_, i) => ({ name: `${i}.csv`, content: '0,1,2\n'.repeat(1_500_000) }))),
  );
  await writeFile(path('liar.zip'), zipOf([{ name: 'a.csv', content: log, claimedSize: 100 }]));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const read = async (...names: string[]): Promise<string> =>
  normalized(await readSources(await openExports(names.map(path))));
const refusal = async (...names: string[]): Promise<ImportRefusal> => {
  const outcome = await read(...names).catch((error: unknown) => error);
  expect(outcome).toBeInstanceOf(ImportRefusal);
  return outcome as ImportRefusal;
};

describe('exports are opened', () => {
  it.each(['plain.csv', 'plain.csv.gz', 'packed.csv', 'unpacked.csv.gz', 'month.zip', 'store'])(
    'from %s, all alike',
    async (name) => {
      expect(await read(name)).toBe(await normalizedContent(log));
    },
  );

  it('with folders inside an archive kept in the name', async () => {
    expect((await openExports([path('month.zip')])).map(({ name }) => name)).toEqual(['rack-a/week-1.csv']);
    expect((await openExports([path('store')])).map(({ name }) => name)).toEqual(['rack-a/week-1.csv']);
    expect((await openExports([path('plain.csv.gz')])).map(({ name }) => name)).toEqual(['plain.csv']);
  });

  it('more than once, as a second pass needs', async () => {
    const sources = await openExports([path('month.zip')]);
    expect(normalized(await readSources(sources))).toBe(normalized(await readSources(sources)));
  });
});

describe('what cannot be opened is refused in one sentence', () => {
  it.each([
    ['missing.csv', 'file-unopened', /does not exist/u],
    ['empty', 'no-files', /No export was found/u],
    ['broken.csv.gz', 'archive-damaged', /damaged/u],
    ['not.gz', 'no-table', /no table/u],
    ['workbooks.zip', 'no-files', /only week 1\.xlsx\. Save a workbook’s sheet as CSV/u],
    ['broken.zip', 'archive-damaged', /damaged/u],
    ['bomb.zip', 'archive-too-large', /unpacks to more/u],
    ['slim-bomb.zip', 'archive-too-large', /unpacks to/u],
    ['bomb.csv.gz', 'archive-too-large', /unpacks to/u],
    ['many-small.zip', 'archive-too-large', /unpacks to/u],
    ['liar.zip', 'archive-damaged', /damaged/u],
  ])('%s', async (name, code, sentence) => {
    const found = await refusal(name);
    expect(found.code).toBe(code);
    expect(found.message).toMatch(sentence);
    expect(found.message).not.toContain('\n');
  });
});
