import { copyFile, link, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type Request, type RequestHandler, Router } from 'express';
import { ImportRefusal } from '../../src/importing/readings.ts';
import { parseSiteFile } from '../../src/importing/site-file/site-file.ts';
import { storageRefusalFrom } from '../../src/store/storage-refusal.ts';
import type { StoredExport } from '../../src/store/stored-export.ts';
import type { Context } from '../context.ts';
import { storedExport } from '../context.ts';
import { only } from '../guards/methods.ts';
import { noQuery } from '../guards/query.ts';
import { Problem } from '../problem.ts';
import { bytesText } from '../uploads/bytes-text.ts';
import { checkQuota } from '../uploads/check-quota.ts';
import { refuseUpload } from '../uploads/refuse-upload.ts';
import { answerAccepted } from './answer-accepted.ts';

const siteFileName = 'site.yaml';

/** The body as text: YAML or JSON, told by its content. */
async function readSiteText(request: Request, limit: number): Promise<string> {
  const encoding = request.headers['content-encoding'];
  if (encoding !== undefined && encoding !== 'identity') throw new Problem('encoded-body');
  const chunks: Buffer[] = [];
  let bytes = 0;
  for await (const chunk of request.iterator({ destroyOnReturn: false }) as AsyncIterable<Buffer>) {
    bytes += chunk.length;
    if (bytes > limit) {
      throw new Problem('too-large', {
        detail: `The site file is larger than ${bytesText(limit)}, the most this server takes.`,
      });
    }
    chunks.push(chunk);
  }
  const text = Buffer.concat(chunks).toString('utf8');
  try {
    parseSiteFile(text, siteFileName);
  } catch (error) {
    if (error instanceof ImportRefusal) throw new Problem('bad-site-file', { detail: error.message });
    throw error;
  }
  return text;
}

/** The stored upload under a new id, with another site file: what was found before stays as it is. */
async function storeAnew({ store }: Context, from: StoredExport, siteText: string): Promise<string> {
  const { id, folder } = await store.begin();
  try {
    for (const { storedAs } of from.files)
      await share(join(store.folderOf(from.id), storedAs), folder, storedAs);
    await writeFile(join(folder, 'site-file'), siteText, { mode: 0o600, flush: true });
    await store.accept({
      ...from,
      id,
      received: new Date().toISOString(),
      state: 'waiting',
      attempts: 0,
      siteFile: { name: siteFileName, storedAs: 'site-file', bytes: Buffer.byteLength(siteText) },
      problem: null,
      summary: null,
    });
    return id;
  } catch (error) {
    await store.discard(id);
    throw storageRefusalFrom(error);
  }
}

/** One file on disk under two names; a copy where the disk knows no links. */
async function share(source: string, folder: string, name: string): Promise<void> {
  await link(source, join(folder, name)).catch(() => copyFile(source, join(folder, name)));
}

function post(context: Context): RequestHandler {
  return async (request, response) => {
    const from = storedExport(context, request.params['id']);
    const giveBack = context.analyser.reserve();
    try {
      if (giveBack === null) throw new Problem('busy', { headers: { 'Retry-After': '30' } });
      await checkQuota(context);
      const id = await storeAnew(context, from, await readSiteText(request, context.limits.siteFileBytes));
      giveBack();
      context.analyser.start(id);
      answerAccepted(response, id);
    } catch (error) {
      giveBack?.();
      refuseUpload(request, response);
      throw error;
    }
  };
}

/** Analyses a stored upload anew with a corrected site file. */
export function siteFileRoutes(context: Context): Router {
  const router = Router();
  router.route('/exports/:id/site').post(noQuery, post(context)).all(only('POST'));
  return router;
}
