import { Router } from 'express';
import type { StoredExport } from '../../src/store/stored-export.ts';
import type { Context } from '../context.ts';
import { storedExport } from '../context.ts';
import { only } from '../guards/methods.ts';
import { noQuery } from '../guards/query.ts';
import { Problem } from '../problem.ts';
import { addressesOf } from './addresses.ts';

const heartbeatMs = 15_000;

function eventText(name: string, data: unknown): string {
  return `event: ${name}\ndata: ${JSON.stringify(data)}\n\n`;
}

function currentEvent({ analyser }: Context, stored: StoredExport): { text: string; last: boolean } {
  if (stored.state === 'ready') {
    const { findings, report, page } = addressesOf(stored.id);
    return { text: eventText('ready', { findings, report, page }), last: true };
  }
  if (stored.state === 'failed') return { text: eventText('failed', stored.problem), last: true };
  const progress = analyser.progressOf(stored.id) ?? { stage: 'waiting', share: null };
  return { text: eventText('progress', progress), last: false };
}

/**
 * Server-sent events of one analysis: `progress` {stage, share}, and at the end `ready` {findings, report, page} or
 * `failed` {code, message, remedy}, after which the stream ends.
 */
export function eventRoutes(context: Context): Router {
  const router = Router();
  let open = 0;
  router
    .route('/exports/:id/events')
    .get(noQuery, (request, response) => {
      const { id } = storedExport(context, request.params.id);
      if (open >= context.limits.progressStreams) {
        throw new Problem('too-many-streams', { headers: { 'Retry-After': '10' } });
      }
      response.status(200).set({ 'Content-Type': 'text/event-stream; charset=utf-8' });
      if (request.method === 'HEAD') {
        response.end();
        return;
      }
      open++;
      const send = (): void => {
        const stored = context.store.get(id);
        if (stored === null) {
          response.end();
          return;
        }
        const { text, last } = currentEvent(context, stored);
        if (last) response.end(text);
        else if (!response.writableNeedDrain) response.write(text);
      };
      const heartbeat = setInterval(() => response.write(': still here\n\n'), heartbeatMs);
      context.analyser.changes.on(id, send);
      response.once('close', () => {
        open--;
        clearInterval(heartbeat);
        context.analyser.changes.off(id, send);
      });
      response.write('retry: 2000\n\n');
      send();
    })
    .all(only('GET'));
  return router;
}
