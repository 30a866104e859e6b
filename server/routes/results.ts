import { open } from 'node:fs/promises';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { type Request, type RequestHandler, type Response, Router } from 'express';
import { resultNames } from '../analysis/result-names.ts';
import type { Context } from '../context.ts';
import { readyExport } from '../context.ts';
import { only } from '../guards/methods.ts';
import { noQuery } from '../guards/query.ts';
import { Problem } from '../problem.ts';

/** A file of the result as the body; opened before anything is sent, so that a fault is answered as one. */
async function send(path: string, request: Request, response: Response): Promise<void> {
  const file = await open(path);
  if (request.method === 'HEAD') {
    await file.close();
    response.end();
  } else {
    await pipeline(file.createReadStream(), response);
  }
}

function sendStored(context: Context, name: string): RequestHandler {
  return async (request, response) => {
    const { id } = readyExport(context, request.params['id']);
    response.type('application/json');
    await send(join(context.store.resultFolderOf(id), name), request, response);
  };
}

/** What an analysis left: the findings document, the report beside it, and the guessed site file. */
export function resultRoutes(context: Context): Router {
  const router = Router();
  router
    .route('/exports/:id/findings')
    .get(noQuery, sendStored(context, resultNames.findings))
    .all(only('GET'));
  router.route('/exports/:id/report').get(noQuery, sendStored(context, resultNames.report)).all(only('GET'));
  router
    .route('/exports/:id/report.html')
    .get(noQuery, async (request, response) => {
      const { id } = readyExport(context, request.params.id);
      response.attachment('rimelog-report.html').type('text/html; charset=utf-8');
      await send(join(context.store.resultFolderOf(id), resultNames.page), request, response);
    })
    .all(only('GET'));
  router
    .route('/exports/:id/site-file')
    .get(noQuery, async (request, response) => {
      const { id, summary } = readyExport(context, request.params.id);
      if (!summary?.guessedSite) throw new Problem('no-site-file');
      response.attachment('site.yaml').type('application/yaml; charset=utf-8');
      await send(join(context.store.resultFolderOf(id), resultNames.siteFile), request, response);
    })
    .all(only('GET'));
  return router;
}
