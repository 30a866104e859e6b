import { createReadStream } from 'node:fs';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { type RequestHandler, Router } from 'express';
import { resultNames } from '../analysis/store-result.ts';
import type { Context } from '../context.ts';
import { readyExport } from '../context.ts';
import { only } from '../guards/methods.ts';
import { noQuery } from '../guards/query.ts';
import { Problem } from '../problem.ts';

function sendStored(context: Context, name: string): RequestHandler {
  return async (request, response) => {
    const { id } = readyExport(context, request.params['id']);
    response.type('application/json');
    if (request.method === 'HEAD') response.end();
    else await pipeline(createReadStream(join(context.store.resultFolderOf(id), name)), response);
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
    .route('/exports/:id/site-file')
    .get(noQuery, async (request, response) => {
      const { id, summary } = readyExport(context, request.params.id);
      if (!summary?.guessedSite) throw new Problem('no-site-file');
      response.attachment('site.yaml').type('application/yaml; charset=utf-8');
      if (request.method === 'HEAD') response.end();
      else {
        const path = join(context.store.resultFolderOf(id), resultNames.siteFile);
        await pipeline(createReadStream(path), response);
      }
    })
    .all(only('GET'));
  return router;
}
