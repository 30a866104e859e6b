import { existsSync } from 'node:fs';
import { join } from 'node:path';
import express, { Router } from 'express';
import type { Context } from '../context.ts';
import { only } from '../guards/methods.ts';
import { Problem } from '../problem.ts';

const year = 365 * 86_400;

/** The built pages: nothing else on the disk is ever served as a file. Names of assets carry their hash. */
export function pageRoutes({ webFolder }: Context): Router {
  const router = Router();
  router
    .route(['/', '/index.html'])
    .get((_request, response, next) => {
      if (!existsSync(join(webFolder, 'index.html'))) return next(new Problem('pages-missing'));
      response.sendFile('index.html', { root: webFolder, cacheControl: false, lastModified: false });
    })
    .all(only('GET'));
  router.use(
    '/assets',
    express.static(join(webFolder, 'assets'), {
      index: false,
      dotfiles: 'ignore',
      redirect: false,
      cacheControl: false,
      setHeaders: (response) => response.setHeader('Cache-Control', `public, max-age=${year}, immutable`),
    }),
  );
  return router;
}
