import { type Request, Router } from 'express';
import { z } from 'zod';
import type { WorkInHand } from '../analysis/on-demand.ts';
import type { Context } from '../context.ts';
import { readyExport } from '../context.ts';
import { only } from '../guards/methods.ts';
import { readQuery } from '../guards/query.ts';
import type { EventStreams } from './event-streams.ts';
import { waitForWork } from './wait-for-work.ts';
import { sendWorkEvents } from './work-events.ts';

const query = z.strictObject({ serviced: z.string().min(1).max(40) });

/** Whether a repair held: a circuit before and after the time of its service. */
export function repairRoutes(context: Context, streams: EventStreams): Router {
  const router = Router();
  const repair = (request: Request): WorkInHand => {
    const stored = readyExport(context, request.params['id']);
    const { serviced } = readQuery(request, query);
    const circuit = String(request.params['circuit']);
    return context.onDemand.ask(stored, { kind: 'repair', circuit, serviced });
  };
  router
    .route('/exports/:id/circuits/:circuit/repair')
    .get(async (request, response) => {
      const body = await waitForWork(context, request, repair(request));
      response.type('application/json').send(body);
    })
    .all(only('GET'));
  router
    .route('/exports/:id/circuits/:circuit/repair/events')
    .get((request, response) => sendWorkEvents(request, response, streams, () => repair(request)))
    .all(only('GET'));
  return router;
}
