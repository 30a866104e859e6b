import { open } from 'node:fs/promises';
import { unusable } from './refusals.ts';

/**
 * Whether a file is packed, by its first bytes (RFC 1952) and not by its name: mail gateways and browsers unpack
 * a `.gz`, or drop its ending, without saying so.
 */
export async function isGzip(path: string): Promise<boolean> {
  const file = await open(path).catch((error: unknown) => {
    throw unusable(path, error);
  });
  try {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(2), 0, 2, 0);
    return bytesRead === 2 && buffer[0] === 0x1f && buffer[1] === 0x8b;
  } catch (error) {
    throw unusable(path, error);
  } finally {
    await file.close();
  }
}
