import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { StorageRefusal, storageRefusalFrom } from './storage-refusal.ts';

function isRunning(processId: number): boolean {
  if (processId === process.pid) return false;
  try {
    process.kill(processId, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

const held = new Set<string>();

/**
 * One server a data folder. Returns the release. Throws a StorageRefusal while another live process, or another
 * server of this one, holds the folder; the lock of a process that has ended is taken over.
 */
export function lockFolder(folder: string): () => void {
  const path = join(folder, 'server.lock');
  for (let attempt = 0; attempt < 2; attempt++) {
    try {
      writeFileSync(path, String(process.pid), { flag: 'wx', mode: 0o600 });
      held.add(path);
      return () => {
        if (held.delete(path)) rmSync(path, { force: true });
      };
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw storageRefusalFrom(error);
      const owner = Number(readFileSync(path, 'utf8'));
      if (held.has(path) || isRunning(owner)) {
        throw new StorageRefusal(
          'folder-in-use',
          `Another rimelog server (process ${owner}) is using this data folder.`,
          'Stop that server, or start this one with --data and another folder.',
        );
      }
      rmSync(path, { force: true });
    }
  }
  throw new StorageRefusal('folder-in-use', 'Another rimelog server took this data folder.', 'Try again.');
}
