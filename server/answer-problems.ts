import { randomBytes } from 'node:crypto';
import type { ErrorRequestHandler } from 'express';
import { StorageRefusal } from '../src/store/storage-refusal.ts';
import { oneLine } from './one-line.ts';
import { Problem, problems } from './problem.ts';

function problemFrom(error: unknown): Problem | null {
  if (error instanceof Problem) return error;
  if (error instanceof StorageRefusal && error.code in problems) {
    return new Problem(error.code as keyof typeof problems, { detail: error.message, remedy: error.remedy });
  }
  if (error instanceof URIError)
    return new Problem('bad-request', { detail: 'The address is not well encoded.' });
  const status = (error as { status?: unknown } | null)?.status;
  if (status === 404) return new Problem('not-found');
  if (typeof status === 'number' && status >= 400 && status < 500) return new Problem('bad-request');
  return null;
}

/**
 * Every error as JSON with code, message and remedy. What is not a known refusal is answered as `internal`,
 * with a reference under which the reason stands in the server's own output, and nothing else of it.
 */
export function answerProblems(log: (line: string) => void): ErrorRequestHandler {
  return (error, request, response, _next) => {
    const known = problemFrom(error);
    const problem = known ?? new Problem('internal');
    const reference = known === null ? randomBytes(4).toString('hex') : undefined;
    if (reference !== undefined) {
      log(
        `error ${reference} ${request.method} ${oneLine(request.path)}: ${oneLine(String(error?.stack ?? error))}`,
      );
    }
    if (response.headersSent) {
      response.destroy();
      return;
    }
    response.removeHeader('Content-Disposition');
    response.status(problem.status).type('application/json').set(problem.headers);
    response.json({
      error: { code: problem.code, message: problem.message, remedy: problem.remedy, reference },
    });
  };
}
