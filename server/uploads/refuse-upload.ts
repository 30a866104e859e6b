import type { Request, Response } from 'express';

const patienceMs = 5000;

/**
 * A client that is still sending reads the refusal only if its bytes are taken a while longer: they are thrown away,
 * and the connection is closed once the answer is out, or after five seconds.
 */
export function refuseUpload(request: Request, response: Response): void {
  if (request.complete || request.destroyed) return;
  response.set('Connection', 'close');
  request.unpipe();
  request.resume();
  const cut = setTimeout(() => request.destroy(), patienceMs);
  request.once('close', () => clearTimeout(cut));
}
