import type { Request, Response } from 'express';
import { Problem } from '../problem.ts';

const heartbeatMs = 15_000;

function eventText(name: string, data: unknown): string {
  return `event: ${name}\ndata: ${JSON.stringify(data)}\n\n`;
}

/** One stream of server-sent events. */
export interface EventStream {
  /** Left out while the other side does not read: the next one says more. */
  send(name: string, data: unknown): void;
  /** The last event, after which the stream ends. */
  end(name: string, data: unknown): void;
  /** Ends the stream without a word. */
  close(): void;
}

/** Streams of progress, as many at the same time as the server allows. */
export class EventStreams {
  readonly #most: number;
  #open = 0;

  constructor(most: number) {
    this.#most = most;
  }

  /** Throws `too-many-streams` where no other can be opened; asked for now, before work is begun for one. */
  requirePlace(): void {
    if (this.#open >= this.#most) throw new Problem('too-many-streams', { headers: { 'Retry-After': '10' } });
  }

  /** Answers with a stream; null for a HEAD request, which is answered here. `onClose` is called once it has ended. */
  start(request: Request, response: Response, onClose: () => void = () => undefined): EventStream | null {
    this.requirePlace();
    response.status(200).set({ 'Content-Type': 'text/event-stream; charset=utf-8' });
    if (request.method === 'HEAD') {
      response.end();
      return null;
    }
    this.#open++;
    const heartbeat = setInterval(() => response.write(': still here\n\n'), heartbeatMs);
    response.once('close', () => {
      this.#open--;
      clearInterval(heartbeat);
      onClose();
    });
    response.write('retry: 2000\n\n');
    return {
      send: (name, data) => {
        if (!response.writableNeedDrain) response.write(eventText(name, data));
      },
      end: (name, data) => response.end(eventText(name, data)),
      close: () => response.end(),
    };
  }
}
