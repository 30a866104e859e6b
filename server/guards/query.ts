import type { Request, RequestHandler } from 'express';
import { type ZodType, z } from 'zod';
import { Problem } from '../problem.ts';

/** The query by `schema`, a strict object of strings; a repeated, nested or unknown parameter is refused. */
export function readQuery<T>(request: Request, schema: ZodType<T>): T {
  const parsed = schema.safeParse(request.query);
  if (parsed.success) return parsed.data;
  const issue = parsed.error.issues[0];
  const where = issue?.path.join('.') || (issue?.code === 'unrecognized_keys' ? issue.keys.join(', ') : '');
  throw new Problem('bad-query', {
    detail: `The query parameter ${JSON.stringify(where.slice(0, 80))} is unknown, repeated or malformed.`,
  });
}

const empty = z.strictObject({});

/** For addresses that take no query. */
export const noQuery: RequestHandler = (request, _response, next) => {
  readQuery(request, empty);
  next();
};
