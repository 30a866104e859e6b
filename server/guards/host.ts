import { isIP } from 'node:net';
import type { RequestHandler } from 'express';
import { Problem } from '../problem.ts';

/** Host name of a `Host` header, without port; null when it is none. */
export function hostNameOf(header: string | undefined): string | null {
  const match = /^(\[[0-9a-f:.]+\]|[^\s:[\]/@?#]+)(?::\d{1,5})?$/i.exec(header ?? '');
  return match === null ? null : match[1]!.toLowerCase().replace(/\.$/, '');
}

/** Loopback names and bare addresses pass: a page elsewhere can point a name of its own here, but not an address. */
function isOwnName(name: string): boolean {
  return name === 'localhost' || name.endsWith('.localhost') || isIP(name.replace(/^\[|\]$/g, '')) !== 0;
}

/** Refuses requests under a foreign name, by which a rebound DNS name would make this server answer for another site. */
export function guardHost(allowedHosts: readonly string[]): RequestHandler {
  const allowed = new Set(allowedHosts.map((name) => name.toLowerCase()));
  return (request, _response, next) => {
    const name = hostNameOf(request.headers.host);
    if (name !== null && (isOwnName(name) || allowed.has(name))) next();
    else next(new Problem('foreign-host'));
  };
}
