import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Nearest folder above this file that holds the package. */
function packageFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, 'package.json'))) {
    const above = dirname(folder);
    if (above === folder) throw new Error('rimelog cannot find its own package; install it again.');
    folder = above;
  }
  return folder;
}

/** True when this runs from the TypeScript sources (tests, development) and not from the build. */
const fromSources = import.meta.url.endsWith('.ts');

/** The worker as the build has it, or the sources behind a loader that understands TypeScript. */
export function workerFile(): string {
  return fromSources
    ? join(packageFolder(), 'server', 'analysis', 'worker-from-sources.mjs')
    : join(packageFolder(), 'dist', 'analysis-worker.js');
}

export function builtPagesFolder(): string {
  return join(packageFolder(), 'dist', 'web');
}
