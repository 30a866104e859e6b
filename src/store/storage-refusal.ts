/** The disk or the data folder did not take or give what was asked. The message names the folder's role, never a path. */
export class StorageRefusal extends Error {
  readonly code: 'disk-full' | 'not-writable' | 'folder-in-use' | 'storage-quota' | 'not-stored';
  readonly remedy: string;

  constructor(code: StorageRefusal['code'], message: string, remedy: string, cause?: unknown) {
    super(message, { cause });
    this.name = 'StorageRefusal';
    this.code = code;
    this.remedy = remedy;
  }
}

/** A failed write in words that a user can act on; other errors pass through unchanged. */
export function storageRefusalFrom(error: unknown): unknown {
  const code = (error as NodeJS.ErrnoException | null)?.code;
  if (code === 'ENOSPC' || code === 'EDQUOT') {
    return new StorageRefusal(
      'disk-full',
      'The disk that holds the data folder is full; what was stored before is unharmed.',
      'Free some space, or delete exports that are no longer needed, and send the file again.',
      error,
    );
  }
  if (code === 'EACCES' || code === 'EPERM' || code === 'EROFS') {
    return new StorageRefusal(
      'not-writable',
      'The data folder cannot be written.',
      'Give the user who runs the server the right to write there, or start it with --data and another folder.',
      error,
    );
  }
  return error;
}
