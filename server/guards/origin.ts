import type { RequestHandler } from 'express';
import { Problem } from '../problem.ts';

/**
 * Changes are taken from this server's own pages and from programs, not from other sites' pages: by Sec-Fetch-Site
 * where the browser sends it, else by Origin against Host. Programs send neither.
 */
export const guardOrigin: RequestHandler = (request, _response, next) => {
  if (request.method === 'GET' || request.method === 'HEAD') return next();
  const site = request.headers['sec-fetch-site'];
  if (site !== undefined) {
    return next(site === 'same-origin' || site === 'none' ? undefined : new Problem('foreign-origin'));
  }
  const origin = request.headers.origin;
  if (origin === undefined) return next();
  const own = URL.canParse(origin) && new URL(origin).host === request.headers.host;
  next(own ? undefined : new Problem('foreign-origin'));
};
