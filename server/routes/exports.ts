import { type RequestHandler, Router } from 'express';
import type { Context } from '../context.ts';
import { storedExport } from '../context.ts';
import { only } from '../guards/methods.ts';
import { noQuery } from '../guards/query.ts';
import { Problem } from '../problem.ts';
import { bytesText } from '../uploads/bytes-text.ts';
import { receiveUpload } from '../uploads/receive-upload.ts';
import { refuseUpload } from '../uploads/refuse-upload.ts';
import { addressesOf } from './addresses.ts';
import { exportEntry } from './export-entry.ts';

/** Refuses before a byte is read what could not be analysed or kept. */
async function checkRoom({ analyser, store, limits }: Context): Promise<void> {
  if (!analyser.hasRoom) throw new Problem('busy', { headers: { 'Retry-After': '30' } });
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

function receive(context: Context): RequestHandler {
  const { store, analyser, limits } = context;
  return async (request, response) => {
    let begun: { id: string; folder: string } | null = null;
    try {
      await checkRoom(context);
      begun = await store.begin();
      const { files, siteFile } = await receiveUpload(request, begun.folder, limits);
      if (!analyser.hasRoom) throw new Problem('busy', { headers: { 'Retry-After': '30' } });
      const { id } = begun;
      await store.accept({
        format: 'rimelog-stored-export/1',
        id,
        received: new Date().toISOString(),
        state: 'waiting',
        attempts: 0,
        files,
        siteFile,
        problem: null,
        summary: null,
      });
      analyser.start(id);
      const addresses = addressesOf(id);
      response
        .status(202)
        .location(addresses.self)
        .json({ id, ...addresses });
    } catch (error) {
      if (begun !== null) await store.discard(begun.id);
      refuseUpload(request, response);
      throw error;
    }
  };
}

/** Uploads: sent, listed, looked up, deleted. */
export function exportRoutes(context: Context): Router {
  const router = Router();
  router
    .route('/exports')
    .get(noQuery, (_request, response) => {
      response.json({ exports: context.store.list().map((stored) => exportEntry(context, stored)) });
    })
    .post(noQuery, receive(context))
    .all(only('GET', 'POST'));
  router
    .route('/exports/:id')
    .get(noQuery, (request, response) => {
      response.json(exportEntry(context, storedExport(context, request.params.id)));
    })
    .delete(noQuery, async (request, response) => {
      const { id } = storedExport(context, request.params.id);
      context.analyser.stop(id);
      await context.store.remove(id);
      response.status(204).end();
    })
    .all(only('GET', 'DELETE'));
  return router;
}
