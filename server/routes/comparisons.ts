import { type Request, Router } from 'express';
import type { WorkInHand } from '../analysis/on-demand.ts';
import type { Context } from '../context.ts';
import { readyExport } from '../context.ts';
import { only } from '../guards/methods.ts';
import { noQuery } from '../guards/query.ts';
import { Problem } from '../problem.ts';
import type { EventStreams } from './event-streams.ts';
import { waitForWork } from './wait-for-work.ts';
import { sendWorkEvents } from './work-events.ts';

/** Two stored exports of one site, figure by figure. */
export function comparisonRoutes(context: Context, streams: EventStreams): Router {
  const router = Router();
  const comparison = (request: Request): WorkInHand => {
    const stored = readyExport(context, request.params['id']);
    const against = readyExport(context, request.params['against']);
    if (stored.id === against.id) throw new Problem('same-export');
    return context.onDemand.ask(stored, { kind: 'comparison', against: against.id }, against);
  };
  router
    .route('/exports/:id/comparisons/:against')
    .get(noQuery, async (request, response) => {
      const body = await waitForWork(context, request, comparison(request));
      response.type('application/json').send(body);
    })
    .all(only('GET'));
  router
    .route('/exports/:id/comparisons/:against/events')
    .get(noQuery, (request, response) =>
      sendWorkEvents(request, response, streams, () => comparison(request)),
    )
    .all(only('GET'));
  return router;
}
