import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { logs, publicFiles } from './corpus.ts';
import { damagedFile } from './mutate.ts';
import { keepsPromises } from './promises.ts';

/** Files that once broke a promise, shrunk, one byte a character. `npm run fuzz` prints new ones. */
const regressions = JSON.parse(
  readFileSync(join(import.meta.dirname, 'regressions.json'), 'utf8'),
) as readonly { readonly what: string; readonly file: string }[];

const filesInCi = 300;
const filesATest = 50;

describe('the importer keeps its promises', () => {
  it.each(regressions)('for what once broke one: $what', async ({ file }) => {
    for (const chunkLength of [1, 7, 64]) await keepsPromises(file, chunkLength);
  });

  it('for what public CSV readers are tested with', async () => {
    expect(publicFiles.length).toBeGreaterThan(200);
    for (const file of publicFiles) await keepsPromises(file, 5);
  });

  it.each([0, 1, 2, 3])('for the logs of the corpus, quarter %i', async (quarter) => {
    expect(logs.length).toBeGreaterThan(100);
    for (const [at, file] of logs.entries()) if (at % 4 === quarter) await keepsPromises(file, 501);
  });

  it.each(Array.from({ length: filesInCi / filesATest }, (_, at) => at * filesATest))(
    'for damaged files of the seeds from %i on',
    async (from) => {
      for (let seed = from; seed < from + filesATest; seed++) {
        const file = damagedFile(seed);
        await keepsPromises(file, 1 + (seed % 97)).catch((error: unknown) => {
          throw new Error(`Seed ${seed} (npm run fuzz -- 1 ${seed} shrinks it): ${String(error)}`);
        });
      }
    },
  );

  it('and the same seed gives the same file', () => {
    expect(damagedFile(7)).toBe(damagedFile(7));
    expect(new Set(Array.from({ length: 50 }, (_, seed) => damagedFile(seed))).size).toBeGreaterThan(45);
  });
});
