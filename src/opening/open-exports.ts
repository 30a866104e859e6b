import { createReadStream } from 'node:fs';
import { open, readdir, stat } from 'node:fs/promises';
import { basename, join, relative, sep } from 'node:path';
import { type ExportSource, ImportRefusal } from '../importing/readings.ts';
import { looksLikeExport } from './export-names.ts';
import { gzipSource, unpackedName } from './gzip-source.ts';
import { isGzip } from './is-gzip.ts';
import { unusable } from './refusals.ts';

/**
 * The exports that `paths` name: files, folders (searched through), `.gz` and `.zip`. Sorted by name within a
 * folder or archive. Throws ImportRefusal where one cannot be opened or none is there.
 */
export async function openExports(paths: readonly string[]): Promise<ExportSource[]> {
  const sources: ExportSource[] = [];
  for (const path of paths) sources.push(...(await openPath(path)));
  if (sources.length === 0) {
    throw new ImportRefusal(
      'no-files',
      `No export was found in ${paths.join(', ')}. Name a CSV file, a folder, a .gz or a .zip that holds one.`,
    );
  }
  return sources;
}

async function openPath(path: string): Promise<ExportSource[]> {
  const found = await stat(path).catch((error: unknown) => {
    throw unusable(path, error);
  });
  if (found.isDirectory()) return openFolder(path);
  if (!found.isFile()) {
    throw new ImportRefusal(
      'file-unopened',
      `${path} is neither a file nor a folder, so it cannot be read. Name an export.`,
    );
  }
  return openFile(path, basename(path), found.size);
}

async function openFile(path: string, name: string, size: number): Promise<ExportSource[]> {
  if (/\.zip$/iu.test(path)) {
    const { zipSources } = await import('./zip-sources.ts');
    return zipSources(path, name);
  }
  if (await isGzip(path)) return [gzipSource(unpackedName(name), () => bytesOf(path))];
  return [{ name: unpackedName(name), size, open: () => plainBytesOf(path) }];
}

const mostFiles = 10_000;

async function openFolder(folder: string): Promise<ExportSource[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true }).catch((error: unknown) => {
    throw unusable(folder, error);
  });
  const files = entries
    .filter((entry) => entry.isFile() && (looksLikeExport(entry.name) || /\.zip$/iu.test(entry.name)))
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name))
    .sort();
  if (files.length > mostFiles) {
    throw new ImportRefusal(
      'no-files',
      `${folder} holds more than ${mostFiles} files. Name the folder of one site.`,
    );
  }
  const sources: ExportSource[] = [];
  for (const file of files) {
    const name = relative(folder, file).split(sep).join('/');
    const { size } = await stat(file);
    sources.push(...(await openFile(file, name, size).catch(noneInside)));
  }
  return sources;
}

/** An archive in a folder that holds no export is passed over, as any other file there. */
function noneInside(error: unknown): ExportSource[] {
  if (error instanceof ImportRefusal && error.code === 'no-files') return [];
  throw error;
}

const chunkBytes = 1 << 19;

/** The bytes of a plain file through two buffers: one is read into while the other is used. */
async function* plainBytesOf(path: string): AsyncIterable<Uint8Array> {
  const file = await open(path).catch((error: unknown) => {
    throw unusable(path, error);
  });
  try {
    let used = Buffer.allocUnsafeSlow(chunkBytes);
    let filled = Buffer.allocUnsafeSlow(chunkBytes);
    let reading = file.read(filled, 0, chunkBytes);
    for (;;) {
      const { bytesRead } = await reading;
      if (bytesRead === 0) return;
      [used, filled] = [filled, used];
      reading = file.read(filled, 0, chunkBytes);
      // Awaited in the next round; until then a failure must not count as unhandled.
      reading.catch(() => {});
      yield used.subarray(0, bytesRead);
    }
  } catch (error) {
    throw unusable(path, error);
  } finally {
    await file.close();
  }
}

async function* bytesOf(path: string): AsyncIterable<Uint8Array> {
  try {
    for await (const chunk of createReadStream(path, { highWaterMark: 1 << 19 })) yield chunk as Uint8Array;
  } catch (error) {
    throw unusable(path, error);
  }
}
