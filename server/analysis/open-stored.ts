import { readFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import type { ExportSource } from '../../src/importing/readings.ts';
import { openExports } from '../../src/opening/open-exports.ts';
import type { SiteFileText } from '../../src/pipeline/gather-readings.ts';
import type { StoredFiles } from './task.ts';

/** The uploaded files as sources that carry the names under which they were sent. */
export async function openStoredExports({ folder, files }: StoredFiles): Promise<ExportSource[]> {
  const opened: ExportSource[] = [];
  for (const { storedAs, name } of files) {
    const sources = await openExports([join(folder, storedAs)]);
    const [only] = sources;
    if (sources.length === 1 && basename(only!.name).startsWith(storedAs.replace(/\.gz$/, ''))) {
      opened.push({ ...only!, name, open: () => only!.open() });
    } else {
      opened.push(...sources);
    }
  }
  return opened;
}

export async function readStoredSiteFile({ folder, siteFile }: StoredFiles): Promise<SiteFileText | null> {
  if (siteFile === null) return null;
  return { name: siteFile.name, text: await readFile(join(folder, siteFile.storedAs), 'utf8') };
}
