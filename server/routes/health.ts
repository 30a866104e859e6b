import { Router } from 'express';
import { version } from '../../src/pipeline/version.ts';
import { only } from '../guards/methods.ts';
import { noQuery } from '../guards/query.ts';

export function healthRoute(): Router {
  const router = Router();
  router
    .route('/health')
    .get(noQuery, (_request, response) => {
      response.json({ status: 'ok', version });
    })
    .all(only('GET'));
  return router;
}
