import { join } from 'node:path';
import { type Request, Router } from 'express';
import type { WorkInHand } from '../analysis/on-demand.ts';
import { resultNames } from '../analysis/result-names.ts';
import type { Context } from '../context.ts';
import { readyExport } from '../context.ts';
import { only } from '../guards/methods.ts';
import { noQuery } from '../guards/query.ts';
import { Problem } from '../problem.ts';
import type { EventStreams } from './event-streams.ts';
import { readStored, sendPage } from './stored-page.ts';
import { waitForWork } from './wait-for-work.ts';
import { sendWorkEvents } from './work-events.ts';

/** `2026-09`, and nothing that could lead out of a folder. */
const monthPattern = /^(\d{4}-(0[1-9]|1[0-2])|all)$/;

/** Pages to print or send: the sheet before a visit, and the report of a month. */
export function workPageRoutes(context: Context, streams: EventStreams): Router {
  const router = Router();
  router
    .route('/exports/:id/visit.html')
    .get(noQuery, async (request, response) => {
      const { id } = readyExport(context, request.params.id);
      sendPage(response, await readStored(join(context.store.resultFolderOf(id), resultNames.visit)));
    })
    .all(only('GET'));
  const month = (request: Request): WorkInHand => {
    const stored = readyExport(context, request.params['id']);
    const name = String(request.params['month']);
    if (!monthPattern.test(name)) throw new Problem('no-month');
    return context.onDemand.ask(stored, { kind: 'month', month: name });
  };
  router
    .route('/exports/:id/months/:month')
    .get(noQuery, async (request, response) => {
      sendPage(response, await waitForWork(context, request, month(request)));
    })
    .all(only('GET'));
  router
    .route('/exports/:id/months/:month/events')
    .get(noQuery, (request, response) => sendWorkEvents(request, response, streams, () => month(request)))
    .all(only('GET'));
  return router;
}
