import type { Request } from 'express';
import type { WorkInHand } from '../analysis/on-demand.ts';
import type { Context } from '../context.ts';

/** The body of something that is being made; the connection may be silent as long as an analysis may take. */
export async function waitForWork(
  { limits }: Context,
  { socket }: Request,
  { body }: WorkInHand,
): Promise<string> {
  socket.setTimeout(limits.analysisMs + limits.silenceMs);
  return body;
}
