import type { RequestHandler } from 'express';
import { Problem } from '../problem.ts';

const known = new Set(['GET', 'HEAD', 'POST', 'DELETE', 'PUT', 'PATCH', 'OPTIONS', 'TRACE']);

/** Methods that this server has no use for at all. */
export const guardMethods: RequestHandler = (request, _response, next) => {
  next(known.has(request.method) ? undefined : new Problem('method-unknown'));
};

/** Last on a route: whatever came this far is a method that the address does not take. */
export function only(...methods: readonly string[]): RequestHandler {
  const allow = (methods.includes('GET') ? [...methods, 'HEAD'] : methods).join(', ');
  return (_request, _response, next) =>
    next(new Problem('method-not-allowed', { headers: { Allow: allow } }));
}
