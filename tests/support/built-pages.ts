import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { mkdir, mkdtemp, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('../../', import.meta.url));

function sourcesKey(): string {
  const hash = createHash('sha256');
  const sources = readdirSync(join(root, 'web'), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
  for (const path of [...sources, 'vite.config.ts', 'src/reporting/html/theme.ts', 'package-lock.json']) {
    hash.update(readFileSync(path.startsWith(root) ? path : join(root, path)));
  }
  return hash.digest('hex').slice(0, 16);
}

/** The pages as they are in the sources now: built once for each state of them, and kept. */
export async function builtPages(): Promise<string> {
  const cache = join(root, 'node_modules', '.cache');
  const folder = join(cache, `rimelog-pages-${sourcesKey()}`);
  if (existsSync(folder)) return folder;
  await mkdir(cache, { recursive: true });
  const temporary = await mkdtemp(`${folder}-`);
  const outDir = join(temporary, 'pages');
  await build({ configFile: join(root, 'vite.config.ts'), logLevel: 'error', build: { outDir } });
  await rename(outDir, folder).catch((error: NodeJS.ErrnoException) => {
    if (error.code !== 'ENOTEMPTY' && error.code !== 'EEXIST') throw error;
  });
  await rm(temporary, { recursive: true, force: true });
  return folder;
}
