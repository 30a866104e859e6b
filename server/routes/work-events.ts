import type { Request, Response } from 'express';
import type { WorkInHand } from '../analysis/on-demand.ts';
import { Problem } from '../problem.ts';
import type { EventStreams } from './event-streams.ts';

/**
 * Server-sent events of something that is made when it is asked for: `progress` {stage, share}, and at the end `ready`
 * {result}, the address to get it from, or `failed` {code, message, remedy}. `ask` begins the work unless it is there.
 */
export async function sendWorkEvents(
  request: Request,
  response: Response,
  streams: EventStreams,
  ask: () => WorkInHand,
): Promise<void> {
  streams.requirePlace();
  const work = request.method === 'HEAD' ? null : ask();
  const onProgress = (): void => stream?.send('progress', work?.progress);
  const stream = streams.start(request, response, () => work?.changes.off('progress', onProgress));
  if (stream === null || work === null) return;
  work.changes.on('progress', onProgress);
  onProgress();
  try {
    await work.body;
    const [path = '', query] = request.originalUrl.split('?', 2);
    stream.end('ready', { result: path.replace(/\/events$/, '') + (query === undefined ? '' : `?${query}`) });
  } catch (error) {
    const { code, message, remedy } = error instanceof Problem ? error : new Problem('internal');
    stream.end('failed', { code, message, remedy });
  }
}
