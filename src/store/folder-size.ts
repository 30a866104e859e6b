import { readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';

/** Bytes of all files in a folder and those below; files that vanish meanwhile count nothing. */
export async function folderSize(folder: string): Promise<number> {
  let total = 0;
  for (const entry of await readdir(folder, { withFileTypes: true }).catch(() => [])) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) total += await folderSize(path);
    else total += (await stat(path).catch(() => null))?.size ?? 0;
  }
  return total;
}
