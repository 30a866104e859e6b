import type { Context } from '../context.ts';
import { Problem } from '../problem.ts';
import { bytesText } from './bytes-text.ts';

/** Refuses before a byte is read what could not be kept. */
export async function checkQuota({ store, limits }: Context): Promise<void> {
  if (store.list().length >= limits.storedExports) {
    throw new Problem('storage-quota', {
      detail: `${limits.storedExports} exports are stored, the most this server keeps.`,
    });
  }
  if ((await store.size()) >= limits.storedBytes) {
    throw new Problem('storage-quota', {
      detail: `The data folder holds ${bytesText(limits.storedBytes)}, the most this server keeps.`,
    });
  }
}
