import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';

/** A folder for one test file, gone afterwards. */
export function scratchFolder(): {
  readonly path: string;
  write(name: string, bytes: string | Uint8Array): string;
} {
  const path = mkdtempSync(join(tmpdir(), 'rimelog-cli-'));
  afterAll(() => rmSync(path, { recursive: true, force: true }));
  return {
    path,
    write(name, bytes) {
      const file = join(path, name);
      writeFileSync(file, bytes);
      return file;
    },
  };
}
