import { join } from 'node:path';
import { Router } from 'express';
import { monthName, resultNames } from '../analysis/result-names.ts';
import type { Context } from '../context.ts';
import { readyExport } from '../context.ts';
import { only } from '../guards/methods.ts';
import { noQuery } from '../guards/query.ts';
import { Problem } from '../problem.ts';
import { readStored, sendPage } from './stored-page.ts';

/** `2026-09`, and nothing that could lead out of a folder. */
const monthPattern = /^\d{4}-(0[1-9]|1[0-2])$/;

/** Pages to print or send: the sheet before a visit, and the report of a month. */
export function workPageRoutes(context: Context): Router {
  const router = Router();
  router
    .route('/exports/:id/visit.html')
    .get(noQuery, async (request, response) => {
      const { id } = readyExport(context, request.params.id);
      sendPage(response, await readStored(join(context.store.resultFolderOf(id), resultNames.visit)));
    })
    .all(only('GET'));
  router
    .route('/exports/:id/months/:month')
    .get(noQuery, async (request, response) => {
      const { id } = readyExport(context, request.params.id);
      const { month } = request.params;
      if (!monthPattern.test(month)) throw new Problem('no-month');
      request.socket.setTimeout(context.limits.analysisMs + context.limits.silenceMs);
      await context.analyser.makeMonth(id, month);
      sendPage(response, await readStored(join(context.store.resultFolderOf(id), monthName(month))));
    })
    .all(only('GET'));
  return router;
}
