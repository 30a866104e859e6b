import { readFile } from 'node:fs/promises';
import type { Response } from 'express';
import { Problem } from '../problem.ts';

const policyPattern = /<meta http-equiv="Content-Security-Policy" content="([^"]+)">/;

/** A file of a result, `made-earlier` where an older analysis did not keep one. */
export async function readStored(path: string): Promise<string> {
  return readFile(path, 'utf8').catch((error: NodeJS.ErrnoException) => {
    throw error.code === 'ENOENT' ? new Problem('made-earlier') : error;
  });
}

/** A page made by an analysis: its one style sheet is allowed by the hash that it names, nothing else. */
export function sendPage(response: Response, page: string): void {
  const policy = policyPattern.exec(page.slice(0, 1000))?.[1] ?? "default-src 'none'";
  response.set('Content-Security-Policy', `${policy}; frame-ancestors 'none'`);
  response.type('text/html; charset=utf-8').send(page);
}
