import { deflateRawSync } from 'node:zlib';
import { crc32 as crcOf } from './crc32.ts';

export interface ZipEntry {
  readonly name: string;
  readonly content: string;
  /** Unpacked size that the archive claims, where it lies. */
  readonly claimedSize?: number;
}

/** A zip archive in memory (PKWARE APPNOTE 6.3.10, sections 4.3.7, 4.3.12 and 4.3.16), large sizes by ZIP64. */
export function zipOf(entries: readonly ZipEntry[]): Uint8Array {
  const parts: Buffer[] = [];
  const directory: Buffer[] = [];
  let offset = 0;
  for (const { name, content, claimedSize } of entries) {
    const data = Buffer.from(content);
    const packed = deflateRawSync(data);
    const size = claimedSize ?? data.length;
    const large = size > 0xfffffffe;
    const extra = large ? Buffer.alloc(12) : Buffer.alloc(0);
    if (large) {
      extra.writeUInt16LE(1, 0);
      extra.writeUInt16LE(8, 2);
      extra.writeBigUInt64LE(BigInt(size), 4);
    }
    const common = Buffer.alloc(26);
    common.writeUInt16LE(45, 0);
    common.writeUInt16LE(8, 4);
    common.writeUInt32LE(crcOf(data), 10);
    common.writeUInt32LE(packed.length, 14);
    common.writeUInt32LE(large ? 0xffffffff : size, 18);
    common.writeUInt16LE(Buffer.byteLength(name), 22);
    common.writeUInt16LE(extra.length, 24);
    const local = Buffer.concat([Buffer.from('PK\x03\x04'), common, Buffer.from(name), extra, packed]);
    const tail = Buffer.alloc(14);
    tail.writeUInt32LE(offset, 10);
    directory.push(
      Buffer.concat([
        Buffer.from('PK\x01\x02'),
        Buffer.from([45, 0]),
        common,
        tail,
        Buffer.from(name),
        extra,
      ]),
    );
    parts.push(local);
    offset += local.length;
  }
  const central = Buffer.concat(directory);
  const end = Buffer.alloc(18);
  end.writeUInt16LE(entries.length, 4);
  end.writeUInt16LE(entries.length, 6);
  end.writeUInt32LE(central.length, 8);
  end.writeUInt32LE(offset, 12);
  return Buffer.concat([...parts, central, Buffer.from('PK\x05\x06'), end]);
}
