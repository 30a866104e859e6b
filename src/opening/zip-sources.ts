import { promisify } from 'node:util';
import yauzl, { type Entry, type ZipFile } from 'yauzl';
import { type ExportSource, ImportRefusal } from '../importing/readings.ts';
import { looksLikeExport } from './export-names.ts';
import { gzipSource, limited, unpackedName } from './gzip-source.ts';
import { damaged, mostUnpackedBytes, packedTooWell, tooLarge, unusable } from './refusals.ts';

const mostEntries = 10_000;

const openZip = promisify<string, yauzl.Options, ZipFile>(yauzl.open);

/** The exports in a zip archive, folders kept in their names. The archive is opened anew for each pass. */
export async function zipSources(path: string, name: string): Promise<ExportSource[]> {
  const entries = await entriesOf(path, name);
  const exports = entries.filter((entry) => looksLikeExport(entry.fileName));
  const unpacked = exports.reduce((sum, entry) => sum + entry.uncompressedSize, 0);
  const packed = exports.reduce((sum, entry) => sum + entry.compressedSize, 0);
  if (unpacked > mostUnpackedBytes || packedTooWell(unpacked, packed)) throw tooLarge(name);
  for (const entry of exports) {
    if (entry.isEncrypted()) {
      throw new ImportRefusal(
        'archive-damaged',
        `${name} is locked with a password. Unpack it yourself and name the files in it.`,
      );
    }
  }
  if (exports.length === 0 && entries.length > 0) {
    const shown = entries.slice(0, 3).map(({ fileName }) => fileName.slice(0, 80));
    throw new ImportRefusal(
      'no-files',
      `${name} holds no CSV export, only ${shown.join(', ')}${entries.length > 3 ? ' …' : ''}. Save a workbook’s sheet as CSV, or name another archive.`,
    );
  }
  exports.sort((a, b) => (a.fileName < b.fileName ? -1 : 1));
  return exports.map((entry) => {
    const open = () => limited(name, bytesOf(path, name, entry.fileName));
    if (/\.gz$/iu.test(entry.fileName)) return gzipSource(unpackedName(entry.fileName), open);
    return { name: entry.fileName, size: entry.uncompressedSize, open };
  });
}

async function opened(path: string, name: string): Promise<ZipFile> {
  return openZip(path, { lazyEntries: true, autoClose: true, validateEntrySizes: true }).catch(
    (error: unknown) => {
      throw (error as { code?: unknown }).code === undefined ? damaged(name) : unusable(path, error);
    },
  );
}

async function entriesOf(path: string, name: string): Promise<Entry[]> {
  const zip = await opened(path, name);
  const entries: Entry[] = [];
  return new Promise((resolve, reject) => {
    zip.on('entry', (entry: Entry) => {
      if (entries.length >= mostEntries) {
        zip.close();
        reject(tooLarge(name));
        return;
      }
      entries.push(entry);
      zip.readEntry();
    });
    zip.on('end', () => resolve(entries));
    zip.on('error', () => reject(damaged(name)));
    zip.readEntry();
  });
}

async function* bytesOf(path: string, name: string, fileName: string): AsyncIterable<Uint8Array> {
  const zip = await opened(path, name);
  try {
    const entry = await new Promise<Entry>((resolve, reject) => {
      zip.on('entry', (each: Entry) => (each.fileName === fileName ? resolve(each) : zip.readEntry()));
      zip.on('end', () => reject(damaged(name)));
      zip.on('error', () => reject(damaged(name)));
      zip.readEntry();
    });
    const stream = await promisify<Entry, NodeJS.ReadableStream>(zip.openReadStream.bind(zip))(entry);
    for await (const chunk of stream) yield chunk as Uint8Array;
  } catch (error) {
    throw error instanceof ImportRefusal ? error : damaged(name);
  } finally {
    zip.close();
  }
}
