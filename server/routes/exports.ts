import { type Request, type RequestHandler, Router } from 'express';
import type { Context } from '../context.ts';
import { storedExport } from '../context.ts';
import { only } from '../guards/methods.ts';
import { noQuery } from '../guards/query.ts';
import { Problem } from '../problem.ts';
import { checkQuota } from '../uploads/check-quota.ts';
import { receiveUpload } from '../uploads/receive-upload.ts';
import { refuseUpload } from '../uploads/refuse-upload.ts';
import { answerAccepted } from './answer-accepted.ts';
import { exportEntry } from './export-entry.ts';

async function receive(context: Context, request: Request): Promise<string> {
  const { store, limits } = context;
  await checkQuota(context);
  const { id, folder } = await store.begin();
  try {
    const { files, siteFile } = await receiveUpload(request, folder, limits);
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
    return id;
  } catch (error) {
    await store.discard(id);
    throw error;
  }
}

/** Takes an upload and puts it in line; a place in line is kept from the first byte on. */
function post(context: Context): RequestHandler {
  return async (request, response) => {
    const giveBack = context.analyser.reserve();
    try {
      if (giveBack === null) throw new Problem('busy', { headers: { 'Retry-After': '30' } });
      const id = await receive(context, request);
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

/** Uploads: sent, listed, looked up, deleted. */
export function exportRoutes(context: Context): Router {
  const router = Router();
  router
    .route('/exports')
    .get(noQuery, (_request, response) => {
      response.json({ exports: context.store.list().map((stored) => exportEntry(context, stored)) });
    })
    .post(noQuery, post(context))
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
