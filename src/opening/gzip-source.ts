import { Readable } from 'node:stream';
import { createGunzip } from 'node:zlib';
import type { ExportSource } from '../importing/readings.ts';
import { ImportRefusal } from '../importing/readings.ts';
import { damaged, mostUnpackedBytes, packedTooWell, tooLarge } from './refusals.ts';

export function unpackedName(name: string): string {
  return name.replace(/\.gz$/iu, '');
}

/** A gzip-packed export, unpacked while it is read and never past the limit. */
export function gzipSource(name: string, open: () => AsyncIterable<Uint8Array>): ExportSource {
  return { name, size: null, open: () => limited(name, gunzipped(name, open())) };
}

async function* gunzipped(name: string, packed: AsyncIterable<Uint8Array>): AsyncIterable<Uint8Array> {
  let packedBytes = 0;
  let unpackedBytes = 0;
  const source = Readable.from(
    (async function* () {
      for await (const chunk of packed) {
        packedBytes += chunk.length;
        yield chunk;
      }
    })(),
    { objectMode: false },
  );
  const gunzip = createGunzip({ chunkSize: 1 << 18 });
  source.on('error', (error) => gunzip.destroy(error));
  source.pipe(gunzip);
  try {
    for await (const chunk of gunzip) {
      unpackedBytes += (chunk as Uint8Array).length;
      if (packedTooWell(unpackedBytes, packedBytes)) throw tooLarge(name);
      yield chunk as Uint8Array;
    }
  } catch (error) {
    throw error instanceof ImportRefusal ? error : damaged(name);
  } finally {
    source.destroy();
    gunzip.destroy();
  }
}

/** Passes bytes on and refuses the rest once there are too many. */
export async function* limited(name: string, chunks: AsyncIterable<Uint8Array>): AsyncIterable<Uint8Array> {
  let total = 0;
  for await (const chunk of chunks) {
    total += chunk.length;
    if (total > mostUnpackedBytes) throw tooLarge(name);
    yield chunk;
  }
}
