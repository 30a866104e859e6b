import { Router } from 'express';
import type { Context } from '../context.ts';
import { storedExport } from '../context.ts';
import { only } from '../guards/methods.ts';
import { noQuery } from '../guards/query.ts';
import { addressesOf } from './addresses.ts';
import type { EventStream, EventStreams } from './event-streams.ts';

function tell({ store, analyser }: Context, id: string, stream: EventStream): void {
  const stored = store.get(id);
  if (stored === null) {
    stream.close();
  } else if (stored.state === 'ready') {
    const { findings, report, page } = addressesOf(id);
    stream.end('ready', { findings, report, page });
  } else if (stored.state === 'failed') {
    stream.end('failed', stored.problem);
  } else {
    stream.send('progress', analyser.progressOf(id) ?? { stage: 'waiting', share: null });
  }
}

/**
 * Server-sent events of one analysis: `progress` {stage, share}, and at the end `ready` {findings, report, page} or
 * `failed` {code, message, remedy}, after which the stream ends.
 */
export function eventRoutes(context: Context, streams: EventStreams): Router {
  const router = Router();
  router
    .route('/exports/:id/events')
    .get(noQuery, (request, response) => {
      const { id } = storedExport(context, request.params.id);
      const { changes } = context.analyser;
      const onChange = (): void => {
        if (stream !== null) tell(context, id, stream);
      };
      const stream = streams.start(request, response, () => changes.off(id, onChange));
      if (stream === null) return;
      changes.on(id, onChange);
      onChange();
    })
    .all(only('GET'));
  return router;
}
