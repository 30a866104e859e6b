import { createWriteStream } from 'node:fs';
import { join } from 'node:path';
import type { Readable } from 'node:stream';
import { Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import busboy from 'busboy';
import type { Request } from 'express';
import { storageRefusalFrom } from '../../src/store/storage-refusal.ts';
import type { StoredFile } from '../../src/store/stored-export.ts';
import { Problem } from '../problem.ts';
import type { ServerLimits } from '../settings.ts';
import { bytesText } from './bytes-text.ts';
import { displayName, storedSuffix } from './file-names.ts';

export interface ReceivedUpload {
  readonly files: readonly StoredFile[];
  readonly siteFile: StoredFile | null;
}

const tooLarge = (what: string, limit: number): Problem =>
  new Problem('too-large', {
    detail: `${what} is larger than ${bytesText(limit)}, the most this server takes.`,
  });

/** Counts the bytes as they come, whatever Content-Length said, and stops at one too many. */
function byteGate(limit: number): Transform {
  let seen = 0;
  return new Transform({
    transform(chunk: Buffer, _encoding, done) {
      seen += chunk.length;
      if (seen > limit) done(tooLarge('The upload', limit));
      else done(null, chunk);
    },
  });
}

function formParser(request: Request, limits: ServerLimits): busboy.Busboy {
  try {
    return busboy({
      headers: request.headers,
      defParamCharset: 'utf8',
      limits: {
        files: limits.files + 1,
        fields: 0,
        parts: limits.files + 2,
        fileSize: Math.max(limits.fileBytes, limits.siteFileBytes) + 1,
        fieldNameSize: 100,
        headerPairs: 50,
      },
    });
  } catch {
    throw new Problem('bad-form');
  }
}

function checkHeaders(request: Request, limits: ServerLimits): void {
  if (!/^multipart\/form-data\s*;/i.test(request.headers['content-type'] ?? ''))
    throw new Problem('not-multipart');
  const encoding = request.headers['content-encoding'];
  if (encoding !== undefined && encoding !== 'identity') throw new Problem('encoded-body');
  if (Number(request.headers['content-length']) > limits.bodyBytes)
    throw tooLarge('The upload', limits.bodyBytes);
}

/**
 * Streams a multipart upload into `folder`, nothing of it held in memory. Files are stored under names of ours; the
 * sender's names and declared types decide nothing. Throws a Problem, after which the caller discards the folder.
 */
export async function receiveUpload(
  request: Request,
  folder: string,
  limits: ServerLimits,
): Promise<ReceivedUpload> {
  checkHeaders(request, limits);
  const form = formParser(request, limits);
  const files: StoredFile[] = [];
  let siteFile: StoredFile | null = null;
  const writing: Promise<void>[] = [];
  let refusal: unknown = null;
  const refuse = (reason: unknown): void => {
    refusal ??= reason;
    form.destroy(refusal as Error);
  };

  const write = async (content: Readable, storedAs: string, limit: number, name: string): Promise<number> => {
    const path = join(folder, storedAs);
    const disk = createWriteStream(path, { flags: 'wx', mode: 0o600, flush: true });
    await pipeline(content, disk);
    if (disk.bytesWritten > limit) throw tooLarge(`The file ${JSON.stringify(name)}`, limit);
    return disk.bytesWritten;
  };

  form.on('file', (field, content, { filename }) => {
    const isSite = field === 'site';
    const name = displayName(filename, isSite ? 'site.yaml' : 'export.csv');
    if (refusal !== null || (!isSite && field !== 'export') || (isSite && siteFile !== null)) {
      content.on('error', () => undefined).resume();
      return refuse(
        new Problem('unknown-field', { detail: `The upload has a field ${JSON.stringify(field)} too many.` }),
      );
    }
    const number = String(files.length + 1).padStart(3, '0');
    const storedAs = isSite ? 'site-file' : `upload-${number}${storedSuffix(name)}`;
    const limit = isSite ? limits.siteFileBytes : limits.fileBytes;
    const place = files.length;
    if (isSite) siteFile = { name, storedAs, bytes: 0 };
    else files.push({ name, storedAs, bytes: 0 });
    writing.push(
      write(content, storedAs, limit, name).then((bytes) => {
        if (isSite) siteFile = { name, storedAs, bytes };
        else files[place] = { name, storedAs, bytes };
      }),
    );
    writing.at(-1)!.catch(refuse);
  });
  form.on('field', (field) =>
    refuse(new Problem('unknown-field', { detail: `The field ${JSON.stringify(field)} is not a file.` })),
  );
  form.on('fieldsLimit', () => refuse(new Problem('unknown-field')));
  form.on('filesLimit', () =>
    refuse(
      new Problem('too-many-files', {
        detail: `The upload has more than ${limits.files} files, the most this server takes.`,
      }),
    ),
  );
  form.on('partsLimit', () =>
    refuse(
      new Problem('too-many-files', {
        detail: `The upload has more than ${limits.files} files, the most this server takes.`,
      }),
    ),
  );

  try {
    await pipeline(request, byteGate(limits.bodyBytes), form);
    await Promise.all(writing);
  } catch (error) {
    await Promise.allSettled(writing);
    throw uploadProblem(refusal ?? error);
  }
  if (files.length > limits.files) throw new Problem('too-many-files');
  if (files.length === 0) throw new Problem('no-export');
  return { files, siteFile };
}

function uploadProblem(error: unknown): unknown {
  if (error instanceof Problem) return error;
  const refusal = storageRefusalFrom(error);
  if (refusal !== error) return refusal;
  const code = (error as NodeJS.ErrnoException).code;
  return code === undefined || code.startsWith('ERR_STREAM') || code === 'ECONNRESET'
    ? new Problem('bad-form')
    : error;
}
