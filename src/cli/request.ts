import { readdir, readFile, stat } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { ImportRefusal } from '../importing/readings.ts';
import type { SiteFileText } from '../pipeline/gather-readings.ts';
import type { Console } from './console.ts';

const largestSiteFileBytes = 4 * 1024 * 1024;
const siteFileNames = ['site.yaml', 'site.yml', 'site.json'];

async function readSiteFile(path: string): Promise<SiteFileText> {
  const { size } = await stat(path).catch((error: NodeJS.ErrnoException) => {
    if (error.code !== 'ENOENT') throw error;
    throw new ImportRefusal(
      'site-file-missing',
      `The site file ${path} does not exist; check the name, or leave --site out to have the columns guessed.`,
    );
  });
  if (size > largestSiteFileBytes) {
    throw new ImportRefusal(
      'site-file-too-large',
      `${path} is too large for a site file (${Math.round(size / 1_048_576)} MB); give the export without --site.`,
    );
  }
  return { name: basename(path), text: await readFile(path, 'utf8') };
}

async function siteFileIn(folder: string): Promise<string | null> {
  const names = await readdir(folder).catch((): string[] => []);
  const found = siteFileNames.filter((name) => names.includes(name));
  return found.length === 1 ? join(folder, found[0]!) : null;
}

/** The site file that was asked for; else the one that lies in the only folder given, which is then said. */
export async function siteFileFor(
  exports: readonly string[],
  asked: string | undefined,
  io: Console,
): Promise<SiteFileText | null> {
  if (asked !== undefined) return readSiteFile(asked);
  if (exports.length !== 1) return null;
  const beside = await siteFileIn(exports[0]!);
  if (beside === null) return null;
  io.err(`Using the site file ${beside}\n`);
  return readSiteFile(beside);
}
