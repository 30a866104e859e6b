import { randomBytes } from 'node:crypto';
import { mkdir, readdir, readFile, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { syncFolder, writeFileAtomically } from './atomic-write.ts';
import { lockFolder } from './folder-lock.ts';
import { folderSize } from './folder-size.ts';
import { storageRefusalFrom } from './storage-refusal.ts';
import type { StoredExport } from './stored-export.ts';

/** An id is ours, never a name that someone sent, so that it can be part of a path. */
const idPattern = /^[0-9a-f]{16}$/;

const manifestName = 'export.json';

/**
 * Uploads and results on disk, one folder an export:
 *
 *     incoming/<id>/               an upload that is still being received; removed at start
 *     exports/<id>/export.json     who, what, and how far
 *     exports/<id>/upload-01 …     the files as they came, under names of ours
 *     exports/<id>/result/         findings.json, views.json, records.f32, perhaps site.yaml
 *
 * Folders and files appear whole, by rename. No two exports share a file, so no update can be lost.
 */
export class ExportStore {
  readonly #folder: string;
  readonly #exports = new Map<string, StoredExport>();
  readonly #writes = new Map<string, Promise<void>>();
  readonly #release: () => void;

  private constructor(folder: string, release: () => void) {
    this.#folder = folder;
    this.#release = release;
  }

  /** Locks the folder, sweeps what a crash left, and reads what is there. Throws a StorageRefusal. */
  static async open(folder: string): Promise<ExportStore> {
    try {
      await mkdir(join(folder, 'incoming'), { recursive: true, mode: 0o700 });
      await mkdir(join(folder, 'exports'), { recursive: true, mode: 0o700 });
    } catch (error) {
      throw storageRefusalFrom(error);
    }
    const store = new ExportStore(folder, lockFolder(folder));
    try {
      await store.#sweep();
      await store.#load();
    } catch (error) {
      store.close();
      throw storageRefusalFrom(error);
    }
    return store;
  }

  close(): void {
    this.#release();
  }

  /** Newest first. */
  list(): StoredExport[] {
    return [...this.#exports.values()].sort((a, b) => b.received.localeCompare(a.received));
  }

  get(id: string): StoredExport | null {
    return this.#exports.get(id) ?? null;
  }

  folderOf(id: string): string {
    return join(this.#folder, 'exports', id);
  }

  resultFolderOf(id: string): string {
    return join(this.folderOf(id), 'result');
  }

  /** Bytes on disk, uploads under way included. */
  size(): Promise<number> {
    return folderSize(this.#folder);
  }

  /** A new folder for an upload, not yet listed. */
  async begin(): Promise<{ id: string; folder: string }> {
    const id = randomBytes(8).toString('hex');
    const folder = join(this.#folder, 'incoming', id);
    try {
      await mkdir(folder, { mode: 0o700 });
    } catch (error) {
      throw storageRefusalFrom(error);
    }
    return { id, folder };
  }

  async discard(id: string): Promise<void> {
    await rm(join(this.#folder, 'incoming', id), { recursive: true, force: true });
  }

  /** Moves a received upload to its place; from here on it is listed. */
  async accept(stored: StoredExport): Promise<void> {
    const incoming = join(this.#folder, 'incoming', stored.id);
    try {
      await writeFileAtomically(join(incoming, manifestName), JSON.stringify(stored, null, 2));
      await rename(incoming, this.folderOf(stored.id));
      await syncFolder(join(this.#folder, 'exports'));
    } catch (error) {
      throw storageRefusalFrom(error);
    }
    this.#exports.set(stored.id, stored);
  }

  /** Returns the new state, or null when the export was removed meanwhile. */
  async update(id: string, change: Partial<StoredExport>): Promise<StoredExport | null> {
    const before = this.#exports.get(id);
    if (before === undefined) return null;
    const after = { ...before, ...change };
    this.#exports.set(id, after);
    const earlier = this.#writes.get(id) ?? Promise.resolve();
    const write = earlier.then(() => this.#writeManifest(id));
    this.#writes.set(
      id,
      write.catch(() => undefined),
    );
    await write;
    return this.get(id);
  }

  /** Writes of one export follow one another, each with the newest state, so that the last on disk is the last that was said. */
  async #writeManifest(id: string): Promise<void> {
    const stored = this.#exports.get(id);
    if (stored === undefined) return;
    try {
      await writeFileAtomically(join(this.folderOf(id), manifestName), JSON.stringify(stored, null, 2));
    } catch (error) {
      if (this.#exports.has(id)) throw storageRefusalFrom(error);
    }
  }

  async remove(id: string): Promise<void> {
    this.#exports.delete(id);
    await this.#writes.get(id);
    this.#writes.delete(id);
    await rm(this.folderOf(id), { recursive: true, force: true, maxRetries: 10, retryDelay: 50 });
  }

  async #sweep(): Promise<void> {
    const incoming = join(this.#folder, 'incoming');
    for (const name of await readdir(incoming))
      await rm(join(incoming, name), { recursive: true, force: true });
    const exports = join(this.#folder, 'exports');
    for (const id of await readdir(exports)) {
      for (const name of await readdir(join(exports, id)).catch(() => [])) {
        if (name.endsWith('.tmp')) await rm(join(exports, id, name), { recursive: true, force: true });
      }
    }
  }

  async #load(): Promise<void> {
    for (const id of await readdir(join(this.#folder, 'exports'))) {
      if (!idPattern.test(id)) continue;
      const stored = await readManifest(join(this.folderOf(id), manifestName));
      if (stored?.id === id) this.#exports.set(id, stored);
    }
  }
}

async function readManifest(path: string): Promise<StoredExport | null> {
  try {
    const stored = JSON.parse(await readFile(path, 'utf8')) as StoredExport;
    return stored.format === 'rimelog-stored-export/1' ? stored : null;
  } catch {
    return null;
  }
}
