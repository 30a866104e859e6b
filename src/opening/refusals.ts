import { ImportRefusal } from '../importing/readings.ts';

const reasons: { readonly [code: string]: string } = {
  ENOENT: 'does not exist. Check the path',
  EACCES: 'may not be read. Check its permissions',
  EPERM: 'may not be read. Check its permissions',
  EISDIR: 'is a folder. Name the export inside it',
  ENAMETOOLONG: 'is not a path. Check it',
  ENOTDIR: 'does not exist. Check the path',
};

/** The refusal for a path that the system does not give. */
export function unusable(path: string, error: unknown): ImportRefusal {
  if (error instanceof ImportRefusal) return error;
  const code = (error as { code?: unknown }).code;
  const reason =
    (typeof code === 'string' ? reasons[code] : undefined) ?? 'cannot be read. Copy it anew and try again';
  return new ImportRefusal('file-unopened', `${path} ${reason}.`);
}

/** Unpacked bytes of one archive that are still an export: some seven years of 120 points a minute. */
export const mostUnpackedBytes = 2 * 1024 ** 3;

/**
 * Whether so many bytes from so few packed ones are a bomb. Text of numbers packs to about a tenth, a wide
 * export in which nothing but the time changes to about a hundredth.
 */
export function packedTooWell(unpackedBytes: number, packedBytes: number): boolean {
  return unpackedBytes > 10e6 && unpackedBytes > 400 * Math.max(1, packedBytes);
}

export function tooLarge(name: string): ImportRefusal {
  return new ImportRefusal(
    'archive-too-large',
    `${name} unpacks to more than ${mostUnpackedBytes / 1024 ** 3} GB, or to hundreds of times its size, which no export does. Unpack it yourself and name the files that you want.`,
  );
}

export function damaged(name: string): ImportRefusal {
  return new ImportRefusal(
    'archive-damaged',
    `${name} is damaged and cannot be unpacked. Download or copy it again.`,
  );
}
